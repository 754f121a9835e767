// @vitest-environment jsdom
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import axe from 'axe-core';
import type { ReactElement } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { generateHistory } from '../../../src/domain/demo/generate.ts';
import type { FileStep } from '../../../src/domain/files/progress.ts';

import { compareRounds } from '../../../src/domain/history/compareRounds.ts';
import { compareUnits } from '../../../src/domain/history/compareUnits.ts';
import { openFindings } from '../../../src/domain/history/findings.ts';
import { buildSeries } from '../../../src/domain/history/series.ts';
import { timelineOf } from '../../../src/domain/history/timeline.ts';
import { formatAnswer } from '../../../src/domain/round/formatAnswer.ts';
import { replay } from '../../../src/domain/round/replay.ts';
import type { CheckLineView } from '../../../src/domain/round/view.ts';
import { trendsFor } from '../../../src/domain/trend/trendsFor.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { readHappening } from '../../../src/domain/unit/happened.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';
import { ComparePage } from '../../../src/ui/lookback/ComparePage.tsx';
import { bytesText, FilesPage, type FilesPageProps } from '../../../src/ui/lookback/FilesPage.tsx';
import { ReportPage } from '../../../src/ui/lookback/ReportPage.tsx';
import { RoundPage, type RoundPageProps } from '../../../src/ui/lookback/RoundPage.tsx';
import { TrendPage } from '../../../src/ui/lookback/TrendPage.tsx';
import { UnitPage } from '../../../src/ui/lookback/UnitPage.tsx';
import { BY_BUTTON } from './givenRounds.ts';

const AT = Date.UTC(2026, 1, 20);
const template = TEMPLATES.find((candidate) => candidate.body.axles === 2) ?? TEMPLATES[0];
if (!template) throw new Error('no template');
const unit = { ...createUnit(template, { id: 'lantern', name: 'Lantern', at: 0 }), demo: true };
const history = generateHistory({ units: [unit], years: 1, seed: 8, at: AT });
const trends = trendsFor(history, AT, 'us');
const fewSeries = trends.series.filter((series) => series.check === 'tire-pressure' || series.check === 'outside-temperature');
// The shortest kind of round: what is shown is the same, and it is shown in a tenth of the time.
const newest = history.rounds.findLast(({ round }) => round.plan.round === 'stop-on-the-road');
if (!newest) throw new Error('no rounds');
const note = {
  id: 'n',
  round: newest.round.id,
  seq: newest.entries.length,
  at: AT,
  kind: 'noted',
  key: null,
  text: 'Door drags.',
  clip: 'c1',
  photo: 'p1',
  finding: true,
  how: BY_BUTTON,
} as const;
const record = { round: newest.round, entries: [...newest.entries, note] };
const roundHref = (round: string) => `#/round/${round}`;

// The test's page has no addresses of its own for pictures.
URL.revokeObjectURL = vi.fn();
afterEach(cleanup);

/** As a browser does when its summary is pressed. */
function openTable(details: HTMLDetailsElement | null | undefined): void {
  if (!details) throw new Error('no table');
  details.open = true;
  fireEvent(details, new Event('toggle'));
}

/** Page structure, names, roles and tables; colors need a real browser. */
async function violationsOf(page: ReactElement): Promise<string[]> {
  const { container } = render(page);
  const result = await axe.run(container, { rules: { 'color-contrast': { enabled: false }, region: { enabled: false } } });
  return result.violations.map((violation) => `${violation.id}: ${violation.nodes[0]?.html}`);
}

function unitPage(onMended = vi.fn()) {
  return (
    <UnitPage
      unit={unit}
      now={AT}
      due={[{ uid: 'x', due: AT - 1000, summary: 'Lantern: replace the gas alarm', description: 'Its date says so.' }]}
      trends={trends.statements}
      rounds={history.rounds
        .map(({ round }) => ({
          id: round.id,
          kind: round.plan.round,
          startedAt: round.startedAt,
          complete: true,
          verdict: 'ok' as const,
        }))
        .reverse()}
      verdictSentences={['Nothing in the way.']}
      findings={openFindings({ rounds: [record], events: [] })}
      photoUrl={async () => 'blob:photo'}
      hrefs={{
        round: roundHref,
        start: (kind) => `#/start/${kind}`,
        resume: roundHref,
        trends: '#/t',
        compare: '#/c',
        edit: '#/e',
        report: roundHref,
      }}
      display="us"
      onHappened={(form) => readHappening(form, unit, AT, 'us')}
      onMended={onMended}
    />
  );
}

describe('UnitPage', () => {
  it('says that it is demo data, what is overdue, and begins each kind of round', () => {
    render(unitPage());
    expect(screen.getByText(/Demo data/)).toBeDefined();
    expect(screen.getByText(/overdue since/)).toBeDefined();
    const start = within(screen.getByRole('navigation', { name: 'Begin a round' })).getAllByRole('link');
    expect(start.map((link) => link.getAttribute('href'))).toEqual([
      '#/start/before-towing',
      '#/start/before-leaving-the-lake',
      '#/start/stop-on-the-road',
    ]);
  });

  it('takes a finding as mended only with what was done and a cost that is a number', () => {
    const onMended = vi.fn();
    render(unitPage(onMended));
    const item = screen.getByText('Door drags.').closest('li');
    if (!item) throw new Error('no finding');
    fireEvent.click(within(item).getByRole('button', { name: /Mended/ }));
    const keep = () => fireEvent.click(within(item).getByRole('button', { name: 'Keep as mended' }));
    keep();
    expect(screen.getByRole('alert').textContent).toMatch(/what was done/);
    fireEvent.change(within(item).getByLabelText('What was done'), { target: { value: 'New hinge.' } });
    fireEvent.change(within(item).getByLabelText(/Cost/), { target: { value: 'much' } });
    keep();
    expect(onMended).not.toHaveBeenCalled();
    fireEvent.change(within(item).getByLabelText(/Cost/), { target: { value: '12,50' } });
    keep();
    expect(onMended).toHaveBeenCalledWith({ finding: 'n', what: 'New hinge.', who: null, cost: 12.5 });
  });

  it('has no fault that a checker finds', async () => {
    expect(await violationsOf(unitPage())).toEqual([]);
  });
});

describe('TrendPage', () => {
  const page = (
    <TrendPage
      unit={unit}
      past={null}
      rounds={history.rounds.length}
      series={fewSeries}
      statements={trends.statements}
      display="us"
      unitHref="#/u"
      roundHref={roundHref}
      onPrint={vi.fn()}
    />
  );

  it('stands the wheels as the unit stands, each with a described chart and a table beside it', () => {
    render(page);
    const section = screen.getByRole('region', { name: 'Tire pressure' });
    const charts = within(section).getAllByRole('img');
    expect(charts).toHaveLength(4);
    expect(charts[0]?.closest('.look-left')).not.toBeNull();
    expect(charts[1]?.closest('.look-right')).not.toBeNull();
    expect(charts[0]?.querySelector('desc')?.textContent).toMatch(
      /^\d+ readings from .* to .*, the first \S+ psi, the last \S+ psi\./,
    );
    const tables = within(section).getAllByText(/^Table/);
    expect(tables).toHaveLength(4);
    openTable(tables[0]?.closest('details'));
    expect(within(section).getAllByRole('row').length).toBeGreaterThan(10);
    expect(section.querySelectorAll('svg text').length).toBeGreaterThan(8);
    expect(section.innerHTML).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('shows the last round while the years before it are read, and tells of rounds that cannot be read', () => {
    const last = buildSeries(history.rounds.slice(-1), []);
    const props = { unit, rounds: 12, statements: [], display: 'us', unitHref: '#/u', roundHref, onPrint: vi.fn() } as const;
    const { rerender } = render(<TrendPage {...props} past="pending" series={last} />);
    expect(screen.getByRole('status').textContent).toBe('Reading 12 rounds for the trends.');
    expect(screen.getAllByRole('img').length).toBeGreaterThan(3);
    expect(document.body.innerHTML).not.toMatch(/NaN|undefined|Infinity/);
    rerender(<TrendPage {...props} past="pending" series={[]} rounds={1} />);
    expect(screen.getByRole('status').textContent).toBe('Reading one round for the trends.');
    expect(screen.queryByText(/no readings yet/)).toBeNull();
    rerender(<TrendPage {...props} past="One round is damaged." series={trends.series} />);
    expect(screen.getByRole('status').textContent).toBe('');
    expect(screen.getByRole('alert').textContent).toBe('One round is damaged.');
  });

  it('steps through the readings by keyboard', () => {
    render(page);
    const [slider] = screen.getAllByRole('slider', { name: 'Step through the readings' });
    if (!slider) throw new Error('no slider');
    fireEvent.change(slider, { target: { value: '0' } });
    expect(slider.getAttribute('aria-valuetext')).toMatch(/, (OK|Watch|Fix|Hold)$/);
    expect(within(slider.closest('figure') ?? document.body).getByRole('link', { name: 'Open the round' })).toBeDefined();
  });

  it('has no fault that a checker finds', { timeout: 60_000 }, async () => {
    const few = trends.series.filter((series) => series.check === 'tire-pressure');
    expect(
      await violationsOf(
        <TrendPage
          unit={unit}
          past={null}
          rounds={history.rounds.length}
          series={few}
          statements={trends.statements}
          display="us"
          unitHref="#/u"
          roundHref={roundHref}
          onPrint={vi.fn()}
        />,
      ),
    ).toEqual([]);
  });
});

describe('RoundPage', () => {
  const page = (changes: Partial<RoundPageProps> = {}) => (
    <RoundPage
      round={record.round}
      complete
      verdict={{ outcome: 'fix', sentences: ['One thing to mend.'] }}
      timeline={timelineOf(record.round, record.entries, new Map(), 'us')}
      display="us"
      unitHref="#/u"
      reportHref="#/r"
      clipUrl={async () => null}
      photoUrl={async () => 'blob:photo'}
      onDeletePhoto={async () => true}
      onDelete={vi.fn()}
      onPrint={vi.fn()}
      {...changes}
    />
  );

  it('plays back every entry, and says that it certifies nothing', async () => {
    const { container } = render(page());
    expect(container.querySelectorAll('.look-timeline > li')).toHaveLength(record.entries.length);
    expect(screen.getByText('Not a certification.')).toBeDefined();
    expect((await screen.findByAltText('Taken at the round', {}, { timeout: 10_000 })).getAttribute('src')).toBe('blob:photo');
  });

  it('says so when a clip is gone', async () => {
    render(page());
    fireEvent.click(screen.getByRole('button', { name: /Play what was heard: note/ }));
    expect(await screen.findByText('The clip is no longer kept.', {}, { timeout: 10_000 })).toBeDefined();
  });

  it('never shows a verdict for a round that is not complete', () => {
    render(page({ complete: false, verdict: { outcome: 'ok', sentences: [] } }));
    expect(screen.getByText('Not complete: it clears nothing.')).toBeDefined();
    expect(screen.getAllByText('Not cleared').length).toBeGreaterThan(0);
  });

  it('deletes only on a press that is confirmed', () => {
    const onDelete = vi.fn();
    render(page({ onDelete }));
    const button = screen.getByRole('button', { name: /Delete this round/ });
    fireEvent.click(button);
    expect(onDelete).not.toHaveBeenCalled();
    fireEvent.click(button);
    expect(onDelete).toHaveBeenCalledTimes(1);
  });

  it('deletes a picture only on a press that is confirmed, and shows it until it is gone', async () => {
    const onDeletePhoto = vi.fn(async () => false);
    render(page({ onDeletePhoto }));
    const button = await screen.findByRole('button', { name: /Delete the picture/ }, { timeout: 10_000 });
    fireEvent.click(button);
    expect(onDeletePhoto).not.toHaveBeenCalled();
    await act(async () => fireEvent.click(button));
    expect(onDeletePhoto).toHaveBeenCalledWith('p1');
    expect(screen.queryByText('The picture is no longer kept.')).toBeNull();
    onDeletePhoto.mockResolvedValue(true);
    fireEvent.click(button);
    await act(async () => fireEvent.click(button));
    expect(screen.getByText('The picture is no longer kept.')).toBeDefined();
  });

  it('has no fault that a checker finds', { timeout: 60_000 }, async () => {
    expect(await violationsOf(page({ timeline: timelineOf(record.round, record.entries, new Map(), 'us').slice(-12) }))).toEqual(
      [],
    );
  });
});

describe('ReportPage', () => {
  const lines = replay(record.round, record.entries).checks.map(
    ({ check, status, entry }, index): CheckLineView => ({
      check,
      status: index === 0 ? 'skipped' : status === 'answered' && entry?.kind === 'answered' ? entry.outcome : 'open',
      value: entry?.kind === 'answered' ? formatAnswer(check, entry.answer, 'us') : null,
      because: null,
    }),
  );
  const page = (
    <ReportPage
      round={record.round}
      people={1}
      complete
      missing={null}
      endedAt={AT}
      verdict={{ outcome: 'not-cleared', sentences: ['A check was skipped.'] }}
      lines={lines}
      findings={openFindings({ rounds: [record], events: [] }).open}
      trends={trends.statements}
      display="us"
      roundHref={roundHref}
      onPrint={vi.fn()}
      photoUrl={async () => 'blob:photo'}
    />
  );

  it('says so when rounds before it could not be read', () => {
    render(page);
    expect(screen.queryByRole('alert')).toBeNull();
    cleanup();
    render({ ...page, props: { ...page.props, missing: 'One round is damaged.' } });
    expect(screen.getByRole('alert').textContent).toBe('One round is damaged.');
  });

  it('names what was skipped, what is to be mended, and that it is no certification', () => {
    render(page);
    const skipped = lines.filter((line) => line.status === 'skipped' || line.status === 'open').length;
    expect(skipped).toBeGreaterThan(0);
    expect(within(screen.getByRole('region', { name: 'Not seen' })).getAllByRole('listitem')).toHaveLength(skipped);
    expect(within(screen.getByRole('region', { name: 'To be mended' })).getByText('Door drags.')).toBeDefined();
    expect(screen.getByText('Not a certification.')).toBeDefined();
    expect(screen.queryByRole('button', { name: /Mended/ })).toBeNull();
  });

  it('has no fault that a checker finds', { timeout: 60_000 }, async () => {
    expect(await violationsOf(page)).toEqual([]);
  });
});

describe('ComparePage', () => {
  const [first, second] = [history.rounds[0], history.rounds[2]];
  if (!first || !second) throw new Error('too few rounds');
  const page = (
    <ComparePage
      heading="Compare"
      demo
      choices={[
        { id: 'a', label: 'November' },
        { id: 'b', label: 'February' },
      ]}
      left="a"
      right="b"
      onChoose={vi.fn()}
      checks={compareRounds(first, second, 'us')}
      figures={compareUnits(unit, { ...unit, brakes: 'none' }, 'us')}
      onPrint={vi.fn()}
    />
  );

  it('shows what differs, and all of it when asked', () => {
    render(page);
    const rows = () => screen.getByRole('table', { name: /Checks/ }).querySelectorAll('tbody tr').length;
    const differing = rows();
    fireEvent.click(screen.getByRole('button', { name: 'Also what is the same' }));
    expect(rows()).toBeGreaterThan(differing);
    expect(differing).toBeGreaterThan(0);
  });

  it('has no fault that a checker finds', async () => {
    expect(await violationsOf(page)).toEqual([]);
  });
});

describe('FilesPage', () => {
  const page = (changes: Partial<FilesPageProps> = {}) => (
    <FilesPage
      backup={{ lastAt: null, roundsSince: 3, isDue: true }}
      storage={{
        usedBytes: 1_234_567,
        quotaBytes: 2e9,
        persisted: false,
        units: 3,
        rounds: 9,
        clips: 4,
        clipBytes: 800,
        photos: 1,
      }}
      importing={{ kind: 'none' }}
      exporting={{ kind: 'none' }}
      onStop={vi.fn()}
      onExport={vi.fn()}
      onShare={null}
      onImport={vi.fn()}
      onPersist={vi.fn()}
      onDropClips={vi.fn()}
      {...changes}
    />
  );

  it('asks for a backup when rounds would be lost, and not when there are none', () => {
    render(page());
    expect(screen.getByText(/3 rounds would be lost/)).toBeDefined();
    expect(screen.getByText(/Save a backup now/)).toBeDefined();
    cleanup();
    render(page({ backup: { lastAt: AT, roundsSince: 0, isDue: false } }));
    expect(screen.queryByText(/Save a backup now/)).toBeNull();
  });

  it('hands over the chosen file and tells what came of it', () => {
    const onImport = vi.fn();
    render(page({ onImport, importing: { kind: 'refused', sentence: 'The file is damaged.' } }));
    const file = new File(['{}'], 'x.json');
    fireEvent.change(screen.getByLabelText('File to import'), { target: { files: [file] } });
    expect(onImport).toHaveBeenCalledWith(file);
    expect(screen.getByRole('alert').textContent).toBe('The file is damaged.');
  });

  it('says what is done to a file in one place that is read out, and how far it is beside it', () => {
    const onStop = vi.fn();
    const at = (step: FileStep, done = 0, of: number | null = null) =>
      ({ kind: 'working', progress: { step, done, of } }) as const;
    const { rerender } = render(page({ onStop, importing: at('checking') }));
    const told = () => screen.getAllByRole('status').map((status) => status.textContent);
    expect(told()).toEqual(['', 'Checking everything in the file.']);
    const regions = screen.getAllByRole('status');
    expect(screen.getByRole('progressbar').hasAttribute('value')).toBe(false);
    screen.getByRole('button', { name: 'Stop' }).focus();
    fireEvent.click(screen.getByRole('button', { name: 'Stop' }));
    expect(onStop).toHaveBeenCalledOnce();
    rerender(page({ onStop, importing: { kind: 'stopped' } }));
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'Import' }));
    // What is being written is no longer stopped.
    rerender(page({ onStop, importing: at('adding-media', 3, 12) }));
    expect(screen.queryByRole('button', { name: 'Stop' })).toBeNull();
    expect(screen.getByRole('progressbar')).toMatchObject({ value: 3, max: 12 });
    rerender(page({ importing: { kind: 'stopped' } }));
    expect(told()).toEqual(['', 'Stopped. Nothing was taken from the file.']);
    rerender(page({ exporting: at('packing') }));
    expect(told()).toEqual(['Packing the file.', '']);
    expect(screen.getAllByRole('status')).toEqual(regions);
    expect((screen.getByLabelText('File to import') as HTMLInputElement).disabled).toBe(true);
  });

  it('says bytes as devices do', () => {
    expect([bytesText(0), bytesText(999), bytesText(1_234_567), bytesText(150e6), bytesText(2e9)]).toEqual([
      '0 bytes',
      '999 bytes',
      '1.2 MB',
      '150 MB',
      '2.0 GB',
    ]);
  });

  it('has no fault that a checker finds', async () => {
    expect(await violationsOf(page())).toEqual([]);
    cleanup();
    const working = { kind: 'working', progress: { step: 'packing', done: 1, of: 2 } } as const;
    expect(await violationsOf(page({ exporting: working }))).toEqual([]);
  });
});
