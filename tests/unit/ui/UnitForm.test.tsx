// @vitest-environment jsdom
import { cleanup, configure, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import type { Unit } from '../../../src/domain/unit/unit.ts';
import { TemplatePicker } from '../../../src/ui/unit/TemplatePicker.tsx';
import { UnitForm } from '../../../src/ui/unit/UnitForm.tsx';
import { UnitList } from '../../../src/ui/unit/UnitList.tsx';

const AT = Date.UTC(2031, 0, 17);
const [template] = TEMPLATES;
if (!template) throw new Error('a template is needed');
const heron = createUnit(template, { id: 'heron', name: 'Heron', at: AT });

afterEach(cleanup);
// The form is long, and nothing in it is hidden by style: looking for what is would take seconds for each query.
configure({ defaultHidden: true });

/** By its label, looked up directly: the general queries try every element of a long form. */
function boxOf(label: string): HTMLElement {
  const found = [...document.querySelectorAll('label')].find((candidate) => candidate.textContent === label);
  if (!found?.control) throw new Error(`there is no box labeled ${label}`);
  return found.control as HTMLElement;
}

const groupOf = (legend: string): HTMLElement | null =>
  [...document.querySelectorAll('legend')].find((candidate) => candidate.textContent === legend)?.closest('fieldset') ?? null;

function givenForm(unit: Unit = heron, display: 'us' | 'metric' = 'us') {
  const saved: Unit[] = [];
  render(<UnitForm unit={unit} isNew display={display} now={AT} onSave={(next) => saved.push(next)} onCancel={() => {}} />);
  const type = (label: string, text: string) => {
    const box = boxOf(label);
    fireEvent.change(box, { target: { value: text } });
    return box;
  };
  const save = () => fireEvent.click(document.querySelector('button[type="submit"]') as HTMLElement);
  return { saved, type, save };
}

describe('UnitForm', () => {
  it('keeps a pressure in pascals as it was typed in psi', () => {
    const { saved, type, save } = givenForm();
    type('Placard cold pressure', '65');
    save();
    // 65 psi at 6894.757 Pa each (NIST SP 811 B.8).
    expect((saved[0]?.tires.placardColdPa ?? 0) / (65 * 6894.757)).toBeCloseTo(1, 6);
  });

  it('leaves a figure alone while it is being typed', () => {
    const { saved, type, save } = givenForm(heron, 'metric');
    expect(type('Overall length', '6.0')).toHaveProperty('value', '6.0');
    expect(type('Overall length', '6.05')).toHaveProperty('value', '6.05');
    save();
    expect(saved[0]?.lengthM).toBeCloseTo(6.05, 9);
  });

  it('says what is wrong only when the box is left, and does not save it', async () => {
    const { saved, type, save } = givenForm();
    const box = type('Placard cold pressure', '6');
    expect(screen.queryByText(/between 10 and 130 psi/)).toBeNull();
    fireEvent.blur(box);
    expect(screen.getByText(/between 10 and 130 psi/)).toBeTruthy();
    save();
    expect(saved).toEqual([]);
    await waitFor(() => expect(document.activeElement?.className).toBe('error-summary'));
  });

  it('takes "I don\'t know" as an answer', () => {
    const { saved, type, save } = givenForm();
    const box = type('Lug torque', '90');
    const row = box.closest('.field-entry') as HTMLElement;
    fireEvent.click(within(row).getByRole('button', { name: "I don't know" }));
    expect(box).toHaveProperty('value', '');
    save();
    expect(saved[0]?.wheels.torqueNm).toBeNull();
  });

  it('asks about cables only where there is a lift with cables', () => {
    givenForm();
    expect(groupOf('Pulleys')).not.toBeNull();
    fireEvent.click(within(groupOf('Lift') as HTMLElement).getByLabelText('Hydraulic'));
    expect(groupOf('Pulleys')).toBeNull();
  });

  it('saves in spite of a doubt, which stands beside its field', () => {
    const { saved, type, save } = givenForm();
    type('VIN', '123');
    expect(screen.getByText('Please check:')).toBeTruthy();
    save();
    expect(saved[0]?.vin).toBe('123');
  });
});

describe('TemplatePicker', () => {
  it('wants a name before the template counts', () => {
    const picked: string[] = [];
    render(<TemplatePicker templates={TEMPLATES} onPick={({ id }, name) => picked.push(`${id} ${name}`)} onCancel={() => {}} />);
    const first = screen.getByRole('button', { name: /Single axle, hand crank/ });
    fireEvent.click(first);
    expect(screen.getByRole('alert').textContent).toContain('Give it a name first');
    fireEvent.change(screen.getByLabelText('Name'), { target: { value: ' Heron ' } });
    fireEvent.click(first);
    expect(picked).toEqual(['single-crank Heron']);
  });
});

describe('UnitList', () => {
  it('puts a unit away and brings one back', () => {
    const done: string[] = [];
    const nothing = () => {};
    render(
      <UnitList
        units={[heron, { ...heron, id: 'grebe', name: 'Grebe', archived: true }]}
        onOpen={nothing}
        onEdit={nothing}
        onDuplicate={(id) => done.push(`copy ${id}`)}
        onArchive={(id) => done.push(`away ${id}`)}
        onRestore={(id) => done.push(`back ${id}`)}
        onNew={nothing}
        onBack={nothing}
      />,
    );
    fireEvent.click(screen.getByRole('button', { name: 'Copy Heron' }));
    fireEvent.click(screen.getByRole('button', { name: 'Put away Heron' }));
    fireEvent.click(screen.getByRole('button', { name: 'Bring back Grebe' }));
    expect(screen.queryByRole('button', { name: 'Put away Grebe' })).toBeNull();
    expect(done).toEqual(['copy heron', 'away heron', 'back grebe']);
  });
});
