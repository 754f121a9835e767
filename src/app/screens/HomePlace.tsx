/** Home: what can be carried on, started or seen to. */
import { useSyncExternalStore } from 'react';
import { BACKUP_AT, type BackupState, backupState } from '../../domain/files/backup.ts';
import { openFindings } from '../../domain/history/findings.ts';
import { verdictOf } from '../../domain/round/judging.ts';
import { replay } from '../../domain/round/replay.ts';
import type { Display } from '../../domain/voice/settings.ts';
import type { RoundHeader } from '../../record/record.ts';
import { HomeScreen, type HomeUnit, type UnfinishedRound } from '../../ui/home/HomeScreen.tsx';
import { useInstall } from '../install.ts';
import type { Services } from '../services.ts';
import { useStore } from '../store.ts';
import { recordsOf } from '../unitData.ts';
import { useRecordData } from '../useRecordData.ts';
import { ago } from '../when.ts';
import type { ScreenProps } from './screenProps.ts';

/** Rounds looked at for what is open: older findings are on the unit's own page. */
const RECENT_ROUNDS = 12;

interface HomeData {
  readonly units: readonly HomeUnit[];
  readonly unfinished: readonly UnfinishedRound[];
  readonly durable: boolean | null;
  readonly backup: BackupState;
}

export function HomePlace({ services, go }: ScreenProps) {
  const { voice, update, settings } = services;
  const { display } = useStore(settings);
  const trouble = useStore(services.trouble);
  const app = useSyncExternalStore(update.subscribe, update.current);
  const install = useInstall();
  const data = useRecordData(services, `home ${display}`, () => homeData(services, display));
  const { units, unfinished, durable, backup } =
    data.state === 'ready' ? data.value : { units: [], unfinished: [], durable: null, backup: null };
  if (data.state === 'loading') return <main className="page" aria-busy="true" />;
  return (
    <HomeScreen
      units={units}
      unfinished={unfinished}
      readiness={{
        offline: app === 'unsupported' ? 'not-possible' : app === 'preparing' ? 'loading' : 'ready',
        update: app === 'waiting' ? 'ready' : 'none',
        install: install.state,
        durable,
        onInstall: install.ask,
        onUpdate: update.apply,
      }}
      atRisk={backup?.isDue ? backup.roundsSince : null}
      trouble={data.state === 'failed' ? data.sentence : trouble}
      onStart={(unit, kind) => {
        void voice.unlock();
        void services.record.persist().catch(() => false);
        go({ at: 'start', unit, kind });
      }}
      onResume={(round) => {
        void voice.unlock();
        go({ at: 'run', round });
      }}
      onRehearse={() => {
        void voice.unlock();
        go({ at: 'rehearsal' });
      }}
      onOpenUnit={(unit) => go({ at: 'unit', unit })}
      onOpenRound={(round) => go({ at: 'round', round })}
      onGo={(place) => go({ at: place })}
    />
  );
}

async function homeData({ record, clock }: Services, display: Display): Promise<HomeData> {
  const [units, headers, room, backupAt] = await Promise.all([
    record.units(),
    record.rounds(),
    record.estimate().catch(() => null),
    record.meta(BACKUP_AT),
  ]);
  const now = clock.now();
  const homeUnits: HomeUnit[] = [];
  for (const unit of units) {
    if (unit.archived) continue;
    const { rounds, events } = await recordsOf(record, unit.id, RECENT_ROUNDS, headers);
    const complete = rounds.filter(({ entries }) => entries.at(-1)?.kind === 'completed').at(-1);
    const state = complete ? replay(complete.round, complete.entries) : null;
    const verdict = state ? verdictOf(state, display) : null;
    homeUnits.push({
      unit,
      last:
        complete && verdict
          ? {
              round: complete.round.id,
              kind: complete.round.plan.round,
              when: ago(complete.round.startedAt, now),
              outcome: verdict.outcome,
              sentence: verdict.sentences[0] ?? '',
            }
          : null,
      due: openFindings({ rounds, events }).open.map((finding) => ({
        id: finding.id,
        sentence: finding.text === null ? finding.title : `${finding.title}: ${finding.text}`,
        outcome: finding.outcome ?? 'watch',
      })),
    });
  }
  return {
    units: homeUnits,
    unfinished: await unfinishedRounds(record, headers, now),
    durable: room?.persisted ?? null,
    backup: backupState(headers, backupAt, now),
  };
}

async function unfinishedRounds(
  record: Services['record'],
  headers: readonly RoundHeader[],
  now: number,
): Promise<UnfinishedRound[]> {
  const unfinished: UnfinishedRound[] = [];
  for (const header of headers.filter((candidate) => candidate.completedAt === null)) {
    const stored = await record.round(header.id).catch(() => null);
    const state = stored ? replay(stored.round, stored.entries) : null;
    unfinished.push({
      round: header.id,
      unitName: header.unitName,
      kind: header.kind,
      when: ago(header.startedAt, now),
      done: state?.checks.filter((check) => check.status !== 'open').length ?? 0,
      total: header.checks,
    });
  }
  return unfinished;
}
