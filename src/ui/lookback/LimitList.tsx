import type { Limit } from '../../domain/checks/outcome.ts';
import { formatQuantity } from '../../domain/quantity/format.ts';
import type { Display } from '../../domain/voice/settings.ts';

const RELATIONS = { 'at-least': 'at least', 'at-most': 'at most', target: 'target' } as const;

/** The limits in force and where each comes from. */
export function LimitList({ limits, display }: { readonly limits: readonly Limit[]; readonly display: Display }) {
  if (limits.length === 0) return null;
  return (
    <ul className="look-limits">
      {limits.map((limit) => (
        <li key={limit.id}>
          {limit.label}: {RELATIONS[limit.relation]} {formatQuantity(limit.si, limit.unit, display)}{' '}
          <span className="look-source">
            ({limit.source.text}
            {limit.source.fromMemory ? ', not re-read' : ''})
          </span>
        </li>
      ))}
    </ul>
  );
}
