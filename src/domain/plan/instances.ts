/** The checks of a round for one unit: every definition that applies, once for each side, wheel or cylinder it concerns. */
import type { CheckDefinition, CheckScope, Mounted, RoundKind } from '../checks/check.ts';
import type { Position } from '../checks/expects.ts';
import { type Unit, wheelPositions } from '../unit/unit.ts';
import type { Place } from './ground.ts';

export interface Instance {
  readonly key: string;
  readonly definition: CheckDefinition;
  readonly scope: CheckScope;
  readonly place: Place;
}

/** What is known of the moment besides the unit. */
export interface Circumstances {
  /** The system in which a bare number is meant and lines speak. Left out: US. */
  readonly display?: 'us' | 'metric';
  /** Wheels taken off and put back not long ago: their lugs are due on a stop on the road too. */
  readonly mounted?: readonly Mounted[];
  /** What is due on this round because of what happened before it, each as a sentence. */
  readonly due?: readonly string[];
}

/** Key of a check in a plan: `tire-pressure@left-front`, `cylinder-weight@cylinder-1`, `deadbolt`. */
export function checkKey(definition: Pick<CheckDefinition, 'id' | 'spread'>, position: Position | null, index: number): string {
  if (definition.spread === 'cylinder') return `${definition.id}@cylinder-${index + 1}`;
  return position === null ? definition.id : `${definition.id}@${position}`;
}

/** Every instance that the round and the unit's sides, wheels and cylinders give, in the order of the catalogue; `applies` is not asked yet. */
export function instancesFor(
  catalogue: readonly CheckDefinition[],
  unit: Unit,
  round: RoundKind,
  at: number,
  { display, mounted = [] }: Circumstances,
): readonly Instance[] {
  return catalogue
    .filter((definition) => definition.rounds.includes(round))
    .flatMap((definition) =>
      spotsOf(definition, unit).map(({ position, index }): Instance => {
        const wheel = mounted.find((one) => one.position === position);
        const scope: CheckScope = {
          unit,
          round,
          position,
          index,
          at,
          ...(display ? { display } : {}),
          ...(wheel ? { mounted: wheel } : {}),
        };
        const kind = definition.station(scope);
        return {
          key: checkKey(definition, position, index),
          definition,
          scope,
          place: { kind, position: kind === 'wheel' ? position : sideOf(kind) },
        };
      }),
    );
}

interface Spot {
  readonly position: Position | null;
  readonly index: number;
}

function spotsOf({ spread }: CheckDefinition, unit: Unit): readonly Spot[] {
  switch (spread) {
    case 'unit':
      return [{ position: null, index: 0 }];
    case 'side':
      return [
        { position: 'left', index: 0 },
        { position: 'right', index: 1 },
      ];
    case 'wheel':
      return wheelPositions(unit.axles).map((position, index) => ({ position, index }));
    case 'cylinder':
      return unit.cylinders.map((_, index) => ({ position: null, index }));
  }
}

function sideOf(kind: Place['kind']): Position | null {
  if (kind === 'left-lift' || kind === 'left-side') return 'left';
  if (kind === 'right-lift' || kind === 'right-side') return 'right';
  return null;
}

/** Keys by key: what each check must follow. */
export type Precedence = ReadonlyMap<string, readonly string[]>;

/**
 * What each check must follow to make sense. A check at a wheel or a side follows those of its own side or wheel; one
 * that is there once follows all.
 */
export function requiredBefore(instances: readonly Instance[]): Precedence {
  return new Map(
    instances.map((instance) => [
      instance.key,
      instances
        .filter(
          (other) => other !== instance && instance.definition.after.includes(other.definition.id) && concerns(instance, other),
        )
        .map(({ key }) => key),
    ]),
  );
}

/**
 * The same, with time allowed for: what takes time is started before anything else elsewhere, and what comes due by
 * itself is placed after everything elsewhere that does not wait for it.
 */
export function withTimeAllowed(instances: readonly Instance[], required: Precedence): Precedence {
  const after = new Map([...required].map(([key, keys]) => [key, new Set(keys)]));
  const timed = instances.filter(({ definition }) => definition.timed !== null);
  const followers = new Set(timed.flatMap(({ key }) => [...following(required, key), key]));
  for (const check of timed) {
    const starter = instances.find(({ definition }) => definition.id === check.definition.timed?.startedBy);
    if (!starter) continue;
    const before = preceding(required, starter.key);
    for (const other of instances) {
      if (other.place.kind === starter.place.kind || before.has(other.key) || followers.has(other.key)) continue;
      after.get(other.key)?.add(starter.key);
      after.get(check.key)?.add(other.key);
    }
  }
  return new Map([...after].map(([key, keys]) => [key, [...keys]]));
}

function concerns(instance: Instance, before: Instance): boolean {
  const mine = instance.scope.position;
  const theirs = before.scope.position;
  if (instance.definition.spread === 'cylinder' && before.definition.spread === 'cylinder') {
    return instance.scope.index === before.scope.index;
  }
  if (mine === null || theirs === null) return true;
  if (instance.definition.spread === 'wheel' && before.definition.spread === 'wheel') return mine === theirs;
  return side(mine) === side(theirs);
}

function side(position: Position): string {
  return position.split('-')[0] ?? position;
}

function preceding(after: Precedence, key: string): ReadonlySet<string> {
  const found = new Set<string>();
  const collect = (current: string): void => {
    for (const before of after.get(current) ?? []) {
      if (found.has(before)) continue;
      found.add(before);
      collect(before);
    }
  };
  collect(key);
  return found;
}

function following(after: Precedence, key: string): ReadonlySet<string> {
  return new Set([...after.keys()].filter((other) => preceding(after, other).has(key)));
}
