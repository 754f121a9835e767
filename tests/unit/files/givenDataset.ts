/** Records for tests of files: small ones to merge, and a year of demo rounds to export. */
import fc from 'fast-check';
import { generateHistory } from '../../../src/domain/demo/generate.ts';
import type { Dataset } from '../../../src/domain/files/dataset.ts';
import type { Entry, UnitEvent } from '../../../src/domain/round/entry.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import { BY_BUTTON, DAY, givenRound, givenUnit } from '../history/givenRounds.ts';

export const AT = Date.UTC(2026, 1, 20);

export function demoDataset(years = 0.3): Dataset {
  const units = TEMPLATES.slice(0, 3).map((template, index) => ({
    ...createUnit(template, { id: `demo-${index}`, name: `Demo ${index}`, at: 0 }),
    demo: true,
  }));
  const { rounds, events } = generateHistory({ units, years, seed: 3, at: AT });
  return {
    schema: 1,
    units,
    rounds: rounds.map(({ round }) => round),
    entries: rounds.flatMap(({ entries }) => entries),
    events,
    deleted: [{ id: 'gone', at: 5 }],
    settings: { display: 'us', volume: 0.8, clips: true, voice: null },
  };
}

const LEFT = { check: 'tire-pressure', position: 'left', rule: 'tire-pressure' } as const;

/** Six rounds of three units whose content never changes, as rounds do not. */
const ROUNDS = [0, 1, 2, 3, 4, 5].map((index) =>
  givenRound({
    id: `round-${index}`,
    at: index * DAY,
    unit: givenUnit({ id: `unit-${index % 3}` }),
    checks: [LEFT],
    answers: [
      { key: 'tire-pressure@left', value: 60 + index },
      { key: 'tire-pressure@left', value: 61 + index },
    ],
  }),
);

const event = (index: number): UnitEvent => ({ id: `event-${index}`, unit: `unit-${index % 3}`, at: index, kind: 'awning-wet' });

/** One copy of a record: some of the units at some revision, some rounds as far as they had got, some events, some deletions. */
export const copies: fc.Arbitrary<Dataset> = fc
  .record({
    units: fc.uniqueArray(
      fc.record({
        index: fc.nat(2),
        revision: fc.nat(3),
        name: fc.constantFrom('Heron', 'Lantern', 'Kestrel'),
        updatedAt: fc.nat(2),
      }),
      { selector: ({ index }) => index },
    ),
    rounds: fc.uniqueArray(fc.record({ index: fc.nat(5), entries: fc.nat(4), fork: fc.boolean() }), {
      selector: ({ index }) => index,
    }),
    events: fc.uniqueArray(fc.nat(5)),
    deleted: fc.array(
      fc.record({
        id: fc.constantFrom('unit-0', 'unit-1', 'round-0', 'round-1', 'round-4', 'event-2'),
        at: fc.integer({ min: 1, max: 3 }),
      }),
      { maxLength: 2 },
    ),
    settings: fc.option(fc.dictionary(fc.constantFrom('a', 'b'), fc.nat(3)), { nil: undefined }),
  })
  .map(
    ({ units, rounds, events, deleted, settings }): Dataset => ({
      schema: 1,
      units: units.map(({ index, revision, name, updatedAt }) => givenUnit({ id: `unit-${index}`, revision, name, updatedAt })),
      rounds: rounds.flatMap(({ index }) => ROUNDS[index]?.round ?? []),
      entries: rounds.flatMap(({ index, entries, fork }) =>
        (ROUNDS[index]?.entries ?? []).slice(0, entries).map((entry) => forked(entry, fork)),
      ),
      events: events.map(event),
      deleted,
      ...(settings ? { settings } : {}),
    }),
  );

/** One unit, one round of a few checks of every kind, an event: everything once, and short enough to spoil ten thousand times. */
export function smallDataset(): Dataset {
  const unit = givenUnit({ cylinders: [{ tareKg: 8, capacityKg: 9, date: '2020-05', dateSuffix: 'E' }] });
  const { round, entries } = givenRound({
    id: 'round-a',
    at: AT,
    unit,
    checks: [
      LEFT,
      { check: 'lugs-moved', position: 'left', rule: 'lugs-moved', count: true },
      { check: 'deadbolt', rule: 'state', state: true },
    ],
    answers: [
      { key: 'tire-pressure@left', value: 62 },
      { key: 'lugs-moved@left', value: 1 },
      { key: 'deadbolt', value: 1 },
    ],
  });
  const noted: Entry = {
    ...entryAfter(entries),
    kind: 'noted',
    key: 'deadbolt',
    text: 'Stiff, "oil" it.',
    clip: 'c1',
    photo: null,
    finding: true,
    how: BY_BUTTON,
  };
  return {
    schema: 1,
    units: [unit],
    rounds: [round],
    entries: [...entries, noted],
    events: [{ id: 'event-a', unit: unit.id, at: AT, kind: 'mended', finding: noted.id, what: 'Oiled.', who: null, cost: 3.5 }],
    deleted: [{ id: 'gone', at: 5 }],
    settings: { display: 'us', volume: 0.8, clips: true, voice: null },
  };
}

function entryAfter(entries: readonly Entry[]) {
  const seq = entries.length;
  return { id: `round-a-${seq}x`, round: 'round-a', seq, at: AT + seq * 60_000 };
}

/** The same round continued on another device: other entries in the same places. */
function forked(entry: Entry, fork: boolean): Entry {
  return fork && entry.seq >= 2 ? { ...entry, id: `${entry.id}-other`, at: entry.at + 1 } : entry;
}
