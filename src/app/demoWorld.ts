/** The demo world: three made-up units and their made-up history, marked as demo data wherever they show. */
import { generateHistory } from '../domain/demo/generate.ts';
import { DATASET_SCHEMA } from '../domain/files/dataset.ts';
import { DEMO_UNITS } from '../domain/unit/demo.ts';
import type { Services } from './services.ts';

const YEARS = 2;
const ROUNDS_PER_YEAR = 10;
const SEED = 7;
/** Histories end on a day of the year, so that adding them twice adds nothing. */
const DAY_MS = 86_400_000;

export async function addDemoWorld({ record, changes, clock }: Services): Promise<void> {
  const known = new Set((await record.units()).map((unit) => unit.id));
  if (DEMO_UNITS.every((unit) => known.has(unit.id))) return;
  const at = Math.floor(clock.now() / DAY_MS) * DAY_MS;
  const { rounds, events } = generateHistory({ units: DEMO_UNITS, years: YEARS, seed: SEED, at, roundsPerYear: ROUNDS_PER_YEAR });
  await record.importDataset({
    schema: DATASET_SCHEMA,
    units: DEMO_UNITS,
    rounds: rounds.map(({ round }) => round),
    entries: rounds.flatMap(({ entries }) => entries),
    events,
    deleted: [],
  });
  changes.update((count) => count + 1);
}
