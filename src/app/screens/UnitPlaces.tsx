/** The list of units, a new one, and the profile of one. */
import { useState } from 'react';
import { createUnit, duplicateUnit, touchUnit } from '../../domain/unit/createUnit.ts';
import { TEMPLATES } from '../../domain/unit/templates.ts';
import type { Unit } from '../../domain/unit/unit.ts';
import { TemplatePicker } from '../../ui/unit/TemplatePicker.tsx';
import { UnitForm } from '../../ui/unit/UnitForm.tsx';
import { UnitList } from '../../ui/unit/UnitList.tsx';
import { newId } from '../clock.ts';
import { addDemoWorld } from '../demoWorld.ts';
import type { Services } from '../services.ts';
import { useStore } from '../store.ts';
import { useRecordData } from '../useRecordData.ts';
import { Missing } from './Missing.tsx';
import type { ScreenProps } from './screenProps.ts';

export function UnitsPlace({ services, go }: ScreenProps) {
  const units = useRecordData(services, 'units', () => services.record.units());
  const change = (id: string, make: (unit: Unit) => Unit) => {
    const unit = units.state === 'ready' ? units.value.find((candidate) => candidate.id === id) : undefined;
    if (unit) void saveUnit(services, make(unit));
  };
  const now = () => services.clock.now();
  if (units.state === 'failed') return <Missing sentence={units.sentence} onHome={() => go({ at: 'home' })} />;
  const hasDemo = units.state === 'ready' && units.value.some((unit) => unit.demo);
  return (
    <>
      <UnitList
        units={units.state === 'ready' ? units.value : []}
        onOpen={(unit) => go({ at: 'unit', unit })}
        onEdit={(unit) => go({ at: 'unit-edit', unit })}
        onDuplicate={(id) => change(id, (unit) => duplicateUnit(unit, { id: newId(), name: `${unit.name} copy`, at: now() }))}
        onArchive={(id) => change(id, (unit) => touchUnit({ ...unit, archived: true }, now()))}
        onRestore={(id) => change(id, (unit) => touchUnit({ ...unit, archived: false }, now()))}
        onNew={() => go({ at: 'unit-new' })}
        onBack={() => go({ at: 'home' })}
      />
      {!hasDemo && (
        <aside className="page">
          <p className="quiet">
            Only looking? Three made-up units with two years of made-up rounds show what there is to look back on.
          </p>
          <button type="button" className="slab" onClick={() => void addDemoWorld(services)}>
            Add demo data
          </button>
        </aside>
      )}
    </>
  );
}

export function UnitNewPlace({ services, go }: ScreenProps) {
  const [unit, setUnit] = useState<Unit | null>(null);
  const { display } = useStore(services.settings);
  if (unit === null) {
    return (
      <TemplatePicker
        templates={TEMPLATES}
        onPick={(template, name) => setUnit(createUnit(template, { id: newId(), name, at: services.clock.now() }))}
        onCancel={() => go({ at: 'home' })}
      />
    );
  }
  return (
    <UnitForm
      unit={unit}
      isNew
      display={display}
      now={services.clock.now()}
      onSave={(saved) => void saveUnit(services, saved).then((kept) => kept && go({ at: 'home' }))}
      onCancel={() => setUnit(null)}
    />
  );
}

export function UnitEditPlace({ services, go, unit: id }: ScreenProps & { readonly unit: string }) {
  const units = useRecordData(services, 'units', () => services.record.units());
  const { display } = useStore(services.settings);
  if (units.state === 'loading') return <main className="page" aria-busy="true" />;
  const unit = units.state === 'ready' ? units.value.find((candidate) => candidate.id === id) : undefined;
  if (!unit) return <Missing sentence="This unit is not on this device." onHome={() => go({ at: 'home' })} />;
  const now = services.clock.now();
  return (
    <UnitForm
      unit={unit}
      isNew={false}
      display={display}
      now={now}
      onSave={(changed) => void saveUnit(services, touchUnit(changed, now)).then((kept) => kept && go({ at: 'unit', unit: id }))}
      onCancel={() => go({ at: 'unit', unit: id })}
    />
  );
}

/** @returns whether it was kept; a failure is told on the screen */
async function saveUnit({ record, changes, trouble }: Services, unit: Unit): Promise<boolean> {
  try {
    await record.putUnit(unit);
    trouble.set(null);
    changes.update((count) => count + 1);
    return true;
  } catch (error) {
    trouble.set(error instanceof Error ? error.message : 'The unit could not be kept.');
    return false;
  }
}
