/** A round's plan for one unit: what applies, in the order that walks and kneels least. */
import { CATALOGUE } from '../checks/catalogue.ts';
import type { CheckDefinition, RoundKind } from '../checks/check.ts';
import type { Unit } from '../unit/unit.ts';
import { KNEEL_M, type Place, walkingTable } from './ground.ts';
import { type Circumstances, type Instance, instancesFor, requiredBefore, withTimeAllowed } from './instances.ts';
import { knownFigures } from './known.ts';
import { leastWalk, type Task } from './order.ts';
import { PLAN_SCHEMA, type Plan, type PlannedCheck, type PlannedStation } from './plan.ts';
import { stationName } from './stationName.ts';
import { unknownsOf } from './unknowns.ts';

/**
 * Plans a round.
 * @param at epoch milliseconds of the planning; decides which dates are old enough to be read again
 * @returns plain JSON data; the same arguments always give the same plan
 */
export function planRound(unit: Unit, round: RoundKind, at: number, circumstances: Circumstances = {}): Plan {
  const candidates = instancesFor(CATALOGUE, unit, round, at, circumstances);
  const instances = candidates.filter(({ definition, scope }) => definition.applies(scope));
  const required = requiredBefore(instances);
  const after = withTimeAllowed(instances, required);
  const places = placesOf(instances);
  const placeKeys = places.map(placeKey);
  const indexOf = new Map(instances.map(({ key }, index) => [key, index]));
  const tasks = instances.map(
    ({ key, definition, scope, place }): Task => ({
      station: placeKeys.indexOf(placeKey(place)),
      kneeling: definition.kneeling,
      urgent: definition.judge(scope).worst === 'hold',
      after: (after.get(key) ?? []).flatMap((before) => indexOf.get(before) ?? []),
    }),
  );
  const walk = leastWalk(tasks, walkingTable(unit, places), KNEEL_M * 1000);

  const visits = new Map<string, number>();
  const stations: PlannedStation[] = [];
  const checks: PlannedCheck[] = [];
  for (const visit of walk.visits) {
    const place = places[visit.station];
    if (!place) continue;
    const base = placeKey(place);
    const time = visits.get(base) ?? 0;
    visits.set(base, time + 1);
    const key = time === 0 ? base : time === 1 ? `${base}-again` : `${base}-again-${time}`;
    const here = visit.tasks.flatMap((index) => instances[index] ?? []);
    stations.push({
      key,
      kind: place.kind,
      position: place.position,
      name: stationName(place, time),
      checks: here.map((instance) => instance.key),
    });
    checks.push(...here.map((instance) => planned(instance, key, required.get(instance.key) ?? [])));
  }
  return {
    schema: PLAN_SCHEMA,
    round,
    unit,
    createdAt: at,
    stations,
    checks,
    unknowns: unknownsOf(unit, round),
    ...(circumstances.due?.length ? { due: circumstances.due } : {}),
    known: knownFigures(candidates),
    walkM: walk.walked / 1000,
    demo: unit.demo,
  };
}

function placesOf(instances: readonly Instance[]): readonly Place[] {
  const places = new Map<string, Place>();
  for (const { place } of instances) places.set(placeKey(place), place);
  return [...places.values()];
}

function placeKey({ kind, position }: Place): string {
  return kind === 'wheel' && position !== null ? `wheel@${position}` : kind;
}

function planned({ key, definition, scope }: Instance, station: string, after: readonly string[]): PlannedCheck {
  return {
    key,
    check: definition.id,
    position: scope.position,
    station,
    names: namesOf(definition, scope.index, scope.unit.cylinders.length),
    expects: definition.expects(scope),
    lines: definition.lines(scope),
    judge: definition.judge(scope),
    timed: definition.timed,
    patienceS: definition.patienceS,
    after,
    sources: definition.sources ?? [],
  };
}

const ORDINALS = ['first', 'second', 'third', 'fourth'] as const;

/** With several cylinders each is named by its number, since none of them has a side. */
function namesOf(definition: CheckDefinition, index: number, cylinders: number): readonly string[] {
  const ordinal = ORDINALS[index];
  if (definition.spread !== 'cylinder' || cylinders < 2 || ordinal === undefined) return definition.names;
  return definition.names.map((name) => `${ordinal} ${name}`);
}
