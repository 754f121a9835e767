// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import axe from 'axe-core';
import { afterEach, describe, expect, it } from 'vitest';
import { NUMBER_TOPICS } from '../../../src/domain/judge/numbers.ts';
import { DEMO_UNITS } from '../../../src/domain/unit/demo.ts';
import { NumbersPage } from '../../../src/ui/numbers/NumbersPage.tsx';
import { WeightsPage } from '../../../src/ui/weights/WeightsPage.tsx';

afterEach(cleanup);

const [unit] = DEMO_UNITS;
if (!unit) throw new Error('no demo unit');

async function violations(container: HTMLElement): Promise<string[]> {
  const found = await axe.run(container, { rules: { 'color-contrast': { enabled: false }, region: { enabled: false } } });
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

describe('where our numbers come from', () => {
  it('lists every figure with its source, in words where it is from memory or common practice', async () => {
    const { container } = render(<NumbersPage display="us" />);
    const figures = NUMBER_TOPICS.flatMap(({ entries }) => entries.filter(({ kind }) => kind === 'figure'));
    const rows = container.querySelectorAll('.numbers-topic > .numbers-scroll tbody tr');
    expect(rows).toHaveLength(figures.length);
    expect(screen.getByText('a tire is cold when parked for at least').closest('tr')?.textContent).toContain('3 h');
    const cvsa = screen.getByText(/of the sidewall maximum or less: flat/).closest('tr');
    expect(cvsa?.textContent).toContain('(from memory)');
    expect(screen.getAllByText('common practice, no source').length).toBeGreaterThan(10);
    expect(container.textContent).not.toMatch(/NaN|undefined|Infinity/);
    expect(await violations(container)).toEqual([]);
  });

  it('shows both in metric: what is printed in the source, and the same converted', () => {
    render(<NumbersPage display="metric" />);
    expect(screen.getByText('tread at least').closest('tr')?.textContent).toContain('2/32 in (1.6 mm)');
  });
});

describe('weights', () => {
  const type = (label: RegExp, value: string, within_: HTMLElement = document.body) =>
    fireEvent.change(within(within_).getByLabelText(label), { target: { value } });

  it('asks for what is missing, then sums and judges', async () => {
    const { container } = render(<WeightsPage unit={unit} display="us" />);
    expect(screen.getByText(/Weigh the tongue once/)).toBeTruthy();
    type(/Tongue weight when empty/, '290');
    type(/Ball to the middle/, '14');
    const gear = screen.getByRole('group', { name: 'Gear behind the axle' });
    type(/How much/, '300', gear);
    type(/How far/, '4', gear);
    const cylinder = screen.getByRole('group', { name: 'Gas cylinder, full' });
    type(/How far/, '14', cylinder);
    // 2,450 empty + 37 + 300; moments: 290 + 37 - 300 * 4 / 14 = 241.3 lb, 8.7 percent.
    expect(screen.getByText('2787 lb')).toBeTruthy();
    expect(screen.getByText(/241\.3 lb, 8\.7 % of gross/)).toBeTruthy();
    expect(screen.getByText(/The tongue is too light/)).toBeTruthy();
    expect(screen.getByText(/rating of the ball/)).toBeTruthy();
    expect(await violations(container)).toEqual([]);
  });

  it('a word where a number belongs is refused at its field, and nothing is summed', () => {
    render(<WeightsPage unit={unit} display="us" />);
    type(/Tongue weight when empty/, 'heavy');
    const box = screen.getByLabelText(/Tongue weight when empty/);
    expect(box.getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByText(/Mend the marked fields/)).toBeTruthy();
    expect(screen.queryByText('Gross weight')).toBeNull();
  });

  it('things can be added, named and taken out', () => {
    render(<WeightsPage unit={unit} display="metric" />);
    fireEvent.click(screen.getByRole('button', { name: 'Add a thing' }));
    const extra = screen.getByRole('group', { name: 'Something else' });
    type(/What it is/, 'Generator', extra);
    fireEvent.click(within(extra).getByRole('button', { name: 'Take Generator out' }));
    expect(screen.queryByRole('group', { name: 'Something else' })).toBeNull();
  });
});
