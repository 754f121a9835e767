/** Dates that the profile already holds and that are well within their limits: shown with the round, not asked again. */
import type { Instance } from './instances.ts';
import type { KnownFigure } from './plan.ts';

/** The dates that instances left out by their own `applies` would have asked for. */
export function knownFigures(all: readonly Instance[]): readonly KnownFigure[] {
  return all.flatMap((instance): readonly KnownFigure[] => {
    const { definition, scope } = instance;
    const expects = definition.expects(scope);
    if (expects.kind !== 'date' || definition.applies(scope)) return [];
    const value = dateInProfile(instance);
    if (value === null) return [];
    return [
      {
        key: instance.key,
        check: definition.id,
        position: scope.position,
        name: definition.lines(scope).name,
        answer: { kind: 'date', form: expects.form, value },
        judge: definition.judge(scope),
      },
    ];
  });
}

function dateInProfile({ definition, scope: { unit, position, index } }: Instance): string | null {
  switch (definition.id) {
    case 'tire-date':
      return position === null ? null : (unit.wheels.dotCodes[position] ?? null);
    case 'cylinder-date':
      return unit.cylinders[index]?.date ?? null;
    case 'co-alarm-date':
      return unit.alarms.co.fitted === false ? null : unit.alarms.co.date;
    case 'gas-alarm-date':
      return unit.alarms.gas.fitted === false ? null : unit.alarms.gas.date;
    case 'smoke-alarm-date':
      return unit.alarms.smoke.fitted === false ? null : unit.alarms.smoke.date;
    default:
      return null;
  }
}
