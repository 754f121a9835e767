/** Every screen in the states that matter, by name. */
import { type ReactNode, useState } from 'react';
import type { RoundRequest } from '../../../src/domain/round/view.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import { DEFAULT_SETTINGS, type Settings } from '../../../src/domain/voice/settings.ts';
import { HomeScreen, type HomeUnit } from '../../../src/ui/home/HomeScreen.tsx';
import { RoundScreen, type RoundScreenProps } from '../../../src/ui/round/RoundScreen.tsx';
import { SettingsScreen } from '../../../src/ui/settings/SettingsScreen.tsx';
import { TemplatePicker } from '../../../src/ui/unit/TemplatePicker.tsx';
import { UnitForm } from '../../../src/ui/unit/UnitForm.tsx';
import { UnitList } from '../../../src/ui/unit/UnitList.tsx';
import { ALARM_DATE, COLD, DATE_CODE, LINES, LUGS, NOW, PINS, PLAN, PRESSURE, ROUND, VALVE, VOLTS, viewOf } from './fakeRound.ts';

const nothing = () => {};
/** What a scene asks for, to be read from outside. */
const requests: RoundRequest[] = [];
Object.assign(globalThis, { requests });

function round(view: RoundScreenProps['view'], display: 'us' | 'metric' = 'us') {
  return () => (
    <RoundScreen
      view={view}
      now={NOW}
      display={display}
      onRequest={(request) => requests.push(request)}
      onLeave={nothing}
      onOpenRound={nothing}
      onPhoto={nothing}
    />
  );
}

const LAST_KEPT = { text: 'tire date, left front: week 36 of 2023', outcome: 'watch', heard: null } as const;
const UNSEEN = LINES.map((line) => ({ ...line, status: 'open' as const, value: null, because: null }));

export interface Scene {
  readonly name: string;
  /** Round screens are held to the stricter rules: 96 px targets and 7:1. */
  readonly strict: boolean;
  readonly render: () => ReactNode;
  /** Selectors pressed one after another before the picture is taken. */
  readonly press?: readonly string[];
}

const strict = (name: string, render: () => ReactNode, press?: readonly string[]): Scene => ({
  name,
  strict: true,
  render,
  ...(press ? { press } : {}),
});

export const SCENES: readonly Scene[] = [
  strict(
    'briefing',
    round(
      viewOf({
        phase: 'briefing',
        current: null,
        station: null,
        done: 0,
        lines: UNSEEN,
        saying: 'Before towing. Heron. Eight checks at five stops. Say "start" when you are ready.',
      }),
    ),
  ),
  strict(
    'state',
    round(
      viewOf({
        current: PINS,
        readBack: LAST_KEPT,
        saying:
          'Week thirty-six of twenty twenty-three. Left side, lift. Keep hands and feet from under the frame. Transport pin, left side: in, with its keeper?',
        speaking: true,
      }),
    ),
  ),
  strict('number', round(viewOf({ before: '62 psi, January 3', beforeValue: { value: 62, unit: 'psi' }, readBack: LAST_KEPT }))),
  strict('number-started', round(viewOf({ before: '62 psi, January 3', beforeValue: { value: 62, unit: 'psi' } })), [
    '[data-part="value"]',
    '[data-ring="3"]',
  ]),
  strict('number-digits', round(viewOf({ current: VOLTS })), ['[data-ring="7"]']),
  strict(
    'number-cold',
    round(viewOf({ current: COLD, timers: [{ key: 'furnace', name: 'furnace', dueAt: NOW + 400_000, due: false }] }), 'metric'),
  ),
  strict('cold-digits', round(viewOf({ current: COLD })), ['[data-ring="7"]']),
  strict(
    'count',
    round(
      viewOf({
        current: LUGS,
        before: '1 lug, January 3',
        timers: [{ key: 'furnace', name: 'furnace after ten minutes', dueAt: NOW - 1, due: true }],
      }),
    ),
  ),
  strict(
    'choice',
    round(
      viewOf({
        current: VALVE,
        ears: { state: 'hearing', sentence: null, progress: null, provider: 'built-in' },
        partial: 'the valve is',
      }),
    ),
  ),
  strict('dot-date', round(viewOf({ current: DATE_CODE }))),
  strict('month-date', round(viewOf({ current: ALARM_DATE }))),
  strict(
    'denied',
    round(
      viewOf({
        current: PINS,
        ears: {
          state: 'denied',
          sentence:
            'The microphone is not allowed. Use the buttons, or allow the microphone in the browser settings and start again.',
          progress: null,
          provider: 'browser',
        },
      }),
    ),
  ),
  strict('skip', round(viewOf({ current: PINS })), ['[data-ring="2"]']),
  strict('more', round(viewOf()), ['[data-ring="62"]']),
  strict('list', round(viewOf()), ['[data-ring="62"]', '[data-ring="2"]']),
  strict('noting', round(viewOf({ phase: 'noting', saying: 'Go ahead.', partial: 'the left pulley squeaks' }))),
  strict(
    'confirming',
    round(
      viewOf({
        phase: 'confirming',
        saying: 'Fifteen or fifty, left front?',
        offers: [
          {
            label: '15 psi, left front',
            answer: { kind: 'reading', si: 103_421, said: { value: 15, unit: 'psi' }, hedged: false },
          },
          {
            label: '50 psi, left front',
            answer: { kind: 'reading', si: 344_738, said: { value: 50, unit: 'psi' }, hedged: false },
          },
        ],
      }),
    ),
  ),
  strict(
    'held',
    round(
      viewOf({
        phase: 'held',
        current: null,
        station: null,
        saying: 'Holding. Say "carry on" when you are back.',
        ears: { state: 'off', sentence: null, progress: null, provider: null },
      }),
    ),
  ),
  strict(
    'keep-failed',
    round(
      viewOf({
        phase: 'keep-failed',
        trouble: 'The device has no room left. Free some space, then try again.',
        saying: 'Not kept. The device has no room left. Say "yes" to try again.',
      }),
    ),
  ),
  strict(
    'wrap-up',
    round(
      viewOf({
        phase: 'wrap-up',
        current: null,
        station: null,
        saying: 'Two checks are open: tire date, lug torque.',
        verdict: { outcome: 'not-cleared', sentences: ['Not cleared: two checks are open that could stop the tow.'] },
      }),
    ),
  ),
  strict(
    'waiting',
    round(
      viewOf({
        phase: 'wrap-up',
        current: null,
        station: null,
        lines: LINES.filter((line) => line.status === 'ok'),
        timers: [{ key: 'furnace', name: 'furnace after ten minutes', dueAt: NOW + 200_000, due: false }],
        saying: 'All that is left is furnace after ten minutes, due in about four minutes.',
      }),
    ),
  ),
  strict(
    'complete',
    round(
      viewOf({
        phase: 'complete',
        current: null,
        station: null,
        saying: 'Round complete. Hold: do not tow until the pin is in.',
        verdict: {
          outcome: 'hold',
          sentences: ['Hold. Do not tow until it is mended.', 'Transport pin, left side: not pinned.'],
        },
      }),
    ),
  ),
  strict(
    'complete-ok',
    round(
      viewOf({
        phase: 'complete',
        current: null,
        station: null,
        round: { ...ROUND, demo: true, plan: { ...PLAN, demo: true } },
        lines: LINES.filter((line) => line.status === 'ok'),
        saying: 'Round complete. Clear to tow.',
        verdict: { outcome: 'ok', sentences: ['Everything that was asked was seen and is in order.'] },
      }),
    ),
  ),
  strict(
    'loading',
    round(viewOf({ current: PRESSURE, ears: { state: 'loading', sentence: null, progress: 0.42, provider: 'built-in' } })),
  ),
  { name: 'home-new', strict: false, render: () => <Home units={[]} /> },
  { name: 'home', strict: false, render: () => <Home units={HOME_UNITS} unfinished /> },
  {
    name: 'picker',
    strict: false,
    render: () => <TemplatePicker templates={TEMPLATES} onPick={nothing} onCancel={nothing} />,
    press: ['.template'],
  },
  {
    name: 'unit-form',
    strict: false,
    render: () => <UnitForm unit={PLAN.unit} isNew display="us" now={NOW} onSave={nothing} onCancel={nothing} />,
    press: ['#field-lift-kind .radio'],
  },
  {
    name: 'unit-wrong',
    strict: false,
    render: () => (
      <UnitForm
        unit={{ ...PLAN.unit, name: '', vin: '123', wheels: { ...PLAN.unit.wheels, stud: '1/2', torqueNm: 400 } }}
        isNew={false}
        display="metric"
        now={NOW}
        onSave={nothing}
        onCancel={nothing}
      />
    ),
    press: ['button[type=submit]'],
  },
  {
    name: 'unit-list',
    strict: false,
    render: () => (
      <UnitList
        units={[...DEMO_UNITS, { ...PLAN.unit, id: 'old', name: 'Grebe', archived: true }]}
        onOpen={nothing}
        onEdit={nothing}
        onDuplicate={nothing}
        onArchive={nothing}
        onRestore={nothing}
        onNew={nothing}
        onBack={nothing}
      />
    ),
  },
  { name: 'settings', strict: false, render: () => <SettingsDemo /> },
];

const HOME_UNITS: readonly HomeUnit[] = DEMO_UNITS.slice(0, 2).map((unit, index) => ({
  unit,
  last:
    index === 0
      ? {
          round: 'r1',
          kind: 'before-towing',
          when: 'January 3',
          outcome: 'fix',
          sentence: 'Two things to mend before the next trip.',
        }
      : null,
  due:
    index === 0
      ? [
          { id: 'a', sentence: 'CO alarm: past its date since March 2029. Replace it.', outcome: 'fix' },
          { id: 'b', sentence: 'Left tire loses about a pound a week.', outcome: 'watch' },
        ]
      : [],
}));

function Home({ units, unfinished = false }: { readonly units: readonly HomeUnit[]; readonly unfinished?: boolean }) {
  return (
    <HomeScreen
      units={units}
      unfinished={
        unfinished
          ? [{ round: 'r9', unitName: 'Heron', kind: 'before-leaving-the-lake', when: 'today at 6:02', done: 23, total: 61 }]
          : []
      }
      readiness={{
        offline: unfinished ? 'ready' : 'loading',
        update: unfinished ? 'ready' : 'none',
        install: unfinished ? 'by-hand' : 'possible',
        durable: unfinished,
        onInstall: nothing,
        onUpdate: nothing,
      }}
      trouble={null}
      onStart={nothing}
      onResume={nothing}
      onRehearse={nothing}
      onOpenUnit={nothing}
      onOpenRound={nothing}
      onGo={nothing}
    />
  );
}

function SettingsDemo() {
  const [settings, setSettings] = useState<Settings>({ ...DEFAULT_SETTINGS, keepClips: true, ears: 'browser' });
  return (
    <SettingsScreen
      settings={settings}
      onChange={setSettings}
      voices={[{ id: 'v', name: 'English (America)', local: true }]}
      mouths={['browser']}
      ears={['built-in', 'browser']}
      onTestVoice={nothing}
      onTestMicrophone={nothing}
      microphone={{ ears: { state: 'listening', sentence: null, progress: null, provider: 'built-in' }, heard: 'sixty-two' }}
      storage="12 rounds and 40 clips, 38 MB of 2 GB. Kept until you delete them."
      onDeleteClips={nothing}
      onBack={nothing}
    />
  );
}
