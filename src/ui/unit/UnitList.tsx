/** All units: open, copy for a second one of the same build, put away without losing its rounds, bring back. */
import type { Unit } from '../../domain/unit/unit.ts';

export interface UnitListProps {
  readonly units: readonly Unit[];
  readonly onOpen: (id: string) => void;
  readonly onEdit: (id: string) => void;
  readonly onDuplicate: (id: string) => void;
  readonly onArchive: (id: string) => void;
  readonly onRestore: (id: string) => void;
  readonly onNew: () => void;
  readonly onBack: () => void;
}

const AXLES = { 1: 'single axle', 2: 'tandem axle', 3: 'triple axle' } as const;
const LIFTS = {
  'hand-crank-cable': 'hand-crank lift',
  'electric-winch-cable': 'electric winch lift',
  hydraulic: 'hydraulic lift',
  none: 'no lift',
} as const;

/** "2019, single axle, hand-crank lift": enough to know it by. */
export function unitInShort({ year, axles, lift, demo }: Unit): string {
  return [year === null ? '' : String(year), AXLES[axles], LIFTS[lift.kind], demo ? 'demo data' : '']
    .filter((part) => part !== '')
    .join(', ');
}

export function UnitList(props: UnitListProps) {
  const { units, onNew, onBack } = props;
  const inUse = units.filter((unit) => !unit.archived);
  const archived = units.filter((unit) => unit.archived);
  return (
    <main className="page">
      <header>
        <h1>Units</h1>
        <p className="quiet">What you tow. A unit that is put away keeps all its rounds.</p>
      </header>
      {inUse.length === 0 && <p>There is no unit yet.</p>}
      <ul className="unit-list">
        {inUse.map((unit) => (
          <UnitRow key={unit.id} unit={unit} {...props} />
        ))}
      </ul>
      {archived.length > 0 && (
        <section className="form-section" aria-labelledby="put-away">
          <h2 id="put-away">Put away</h2>
          <ul className="unit-list">
            {archived.map((unit) => (
              <UnitRow key={unit.id} unit={unit} {...props} />
            ))}
          </ul>
        </section>
      )}
      <div className="form-foot">
        <button type="button" className="slab main" onClick={onNew}>
          New unit
        </button>
        <button type="button" className="slab" onClick={onBack}>
          Home
        </button>
      </div>
    </main>
  );
}

function UnitRow({ unit, onOpen, onEdit, onDuplicate, onArchive, onRestore }: UnitListProps & { readonly unit: Unit }) {
  const { id, name, archived } = unit;
  return (
    <li className="unit-row">
      <div>
        <h2 className="h3">{name}</h2>
        <p className="quiet">{unitInShort(unit)}</p>
      </div>
      <div className="row-buttons">
        <button type="button" className="slab" onClick={() => onOpen(id)} aria-label={`Open ${name}`}>
          Open
        </button>
        {archived ? (
          <button type="button" className="slab" onClick={() => onRestore(id)} aria-label={`Bring back ${name}`}>
            Bring back
          </button>
        ) : (
          <>
            <button type="button" className="slab" onClick={() => onEdit(id)} aria-label={`Change ${name}`}>
              Change
            </button>
            <button type="button" className="slab" onClick={() => onDuplicate(id)} aria-label={`Copy ${name}`}>
              Copy
            </button>
            <button type="button" className="slab" onClick={() => onArchive(id)} aria-label={`Put away ${name}`}>
              Put away
            </button>
          </>
        )}
      </div>
    </li>
  );
}
