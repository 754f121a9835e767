/** Which screen is shown. Screens get data and callbacks; everything that acts is here or in the services. */
import { useEffect, useState } from 'react';
import type { RoundKind } from '../domain/checks/check.ts';
import { DEMO_UNITS } from '../domain/unit/demo.ts';
import type { Unit } from '../domain/unit/unit.ts';
import { type OpenResult, resumeRound, startRound } from './openRound.ts';
import { RunRound } from './RunRound.tsx';
import { hashOf, parseRoute, type Route } from './route.ts';
import type { Services } from './services.ts';
import { useStore } from './store.ts';
import { useOpenRound } from './useOpenRound.ts';
import { useRecordData } from './useRecordData.ts';

export interface ScreenProps {
  readonly services: Services;
  readonly go: (route: Route) => void;
}

export function App({ services }: { readonly services: Services }) {
  const [route, setRoute] = useState(() => parseRoute(location.hash));
  useEffect(() => {
    const onChange = () => setRoute(parseRoute(location.hash));
    window.addEventListener('hashchange', onChange);
    return () => window.removeEventListener('hashchange', onChange);
  }, []);
  const { voice } = services;
  useEffect(() => {
    // Browsers allow sound only after a press; the first one anywhere will do.
    const unlock = () => void voice.unlock();
    window.addEventListener('pointerdown', unlock, { once: true });
    window.addEventListener('keydown', unlock, { once: true });
    return () => {
      window.removeEventListener('pointerdown', unlock);
      window.removeEventListener('keydown', unlock);
    };
  }, [voice]);
  const { theme } = useStore(services.settings);
  useEffect(() => {
    if (theme === 'auto') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  const trouble = useStore(services.trouble);
  const go = (next: Route) => {
    location.hash = hashOf(next);
  };
  return (
    <>
      {trouble !== null && (
        <p className="app-trouble" role="alert">
          {trouble}
        </p>
      )}
      <Place services={services} go={go} route={route} />
    </>
  );
}

function Place({ route, ...screen }: ScreenProps & { readonly route: Route }) {
  switch (route.at) {
    case 'start':
      return (
        <Walk
          {...screen}
          walk={`start ${route.unit} ${route.kind}`}
          open={() => startFor(screen.services, route.unit, route.kind)}
        />
      );
    case 'run':
      return <Walk {...screen} walk={`run ${route.round}`} open={() => resumeRound(screen.services, route.round)} />;
    default:
      return <ProvisionalHome {...screen} />;
  }
}

async function startFor(services: Services, id: string, kind: RoundKind): Promise<OpenResult> {
  const unit = (await services.record.units()).find((candidate) => candidate.id === id);
  return unit ? startRound(services, unit, kind) : { kind: 'refused', sentence: 'This unit is not on this device.' };
}

function Walk({ services, go, walk, open }: ScreenProps & { readonly walk: string; readonly open: () => Promise<OpenResult> }) {
  const opening = useOpenRound(walk, open);
  const { display } = useStore(services.settings);
  if (opening.state === 'opening') return <p>Opening the round.</p>;
  if (opening.state === 'refused') return <p role="alert">{opening.sentence}</p>;
  const { session, round } = opening.open;
  return (
    <RunRound
      session={session}
      round={round}
      display={display}
      now={services.clock.now}
      onLeave={() => go({ at: 'home' })}
      onOpenRound={() => go({ at: 'round', round: round.id })}
    />
  );
}

function ProvisionalHome({ services, go }: ScreenProps) {
  const units = useRecordData(services, 'units', () => services.record.units());
  const demo = async () => {
    for (const unit of DEMO_UNITS) await services.record.putUnit(unit);
    services.changes.update((count) => count + 1);
  };
  return (
    <main>
      <h1>Gloveside</h1>
      <button type="button" onClick={() => void demo()}>
        Add the demo units
      </button>
      {units.state === 'ready' &&
        units.value.map((unit: Unit) => (
          <button key={unit.id} type="button" onClick={() => go({ at: 'start', unit: unit.id, kind: 'before-towing' })}>
            Before towing {unit.name}
          </button>
        ))}
    </main>
  );
}
