import { describe, expect, it } from 'vitest';
import { CATALOGUE, findCheck } from '../../../src/domain/checks/catalogue.ts';
import type { CheckLines } from '../../../src/domain/checks/check.ts';
import type { Expects } from '../../../src/domain/checks/expects.ts';
import { instancesFor } from '../../../src/domain/plan/instances.ts';
import { UNITS } from '../../../src/domain/quantity/units.ts';
import { AT, ROUNDS, UNITS_UNDER_TEST } from '../plan/units.ts';

const MOUNTED = (['left', 'left-front'] as const).map((position) => ({ position, odometerM: 66_358_000, pulledM: 0 }));

/** Every scope in which a definition is used by any unit under test, in both systems. */
const USES = UNITS_UNDER_TEST.flatMap((unit) =>
  ROUNDS.flatMap((round) =>
    (['us', 'metric'] as const).flatMap((display) => instancesFor(CATALOGUE, unit, round, AT, { display, mounted: MOUNTED })),
  ),
).filter(({ definition, scope }) => definition.applies(scope));

const usesOf = (id: string) => USES.filter(({ definition }) => definition.id === id);
const IDS = CATALOGUE.map(({ id }) => id);

/** Letters and the marks that a voice turns into pauses; no digits, signs or abbreviations in capitals. */
const SPEAKABLE = /^[A-Z][A-Za-z ,.?!:'"-]+[.?!"]$/;
const PHRASE = /^[a-z]+(?:[' ][a-z]+)*$/;

function phrasesOf(expects: Expects): readonly string[] {
  switch (expects.kind) {
    case 'state':
      return [...expects.ok, ...expects.problem];
    case 'choice':
      return expects.options.flatMap(({ label, phrases }) => [label, ...phrases]);
    case 'count':
      return [...expects.noun, ...expects.nonePhrases, ...expects.allPhrases];
    default:
      return [];
  }
}

const RANK = { ok: 0, watch: 1, fix: 2, hold: 3 } as const;

describe('the catalogue', () => {
  it('has unique ids, and finds each by its id', () => {
    expect(new Set(IDS).size).toBe(IDS.length);
    for (const definition of CATALOGUE) expect(findCheck(definition.id)).toBe(definition);
    expect(findCheck('no-such-check')).toBeUndefined();
  });

  it('is used in full by the units under test', () => {
    for (const id of IDS) expect(usesOf(id).length, id).toBeGreaterThan(0);
  });

  it('names only checks that exist, where one follows or is timed by another', () => {
    for (const { id, after, timed } of CATALOGUE) {
      for (const before of after) expect(IDS, `${id} after ${before}`).toContain(before);
      if (timed) expect(IDS).toContain(timed.startedBy);
    }
  });

  it('covers what the three rounds must cover', () => {
    const inRound = (round: (typeof ROUNDS)[number]) =>
      CATALOGUE.filter(({ rounds }) => rounds.includes(round)).map(({ id }) => id);
    expect(inRound('before-towing').length).toBeGreaterThanOrEqual(55);
    expect(inRound('before-leaving-the-lake')).toEqual(
      expect.arrayContaining(['frozen-frame', 'ice-wheels', 'ice-lift', 'broken-wires']),
    );
    expect([...inRound('stop-on-the-road')]).toEqual(
      expect.arrayContaining([
        'hub-heat',
        'lugs-moved',
        'rear-lamps',
        'side-lamps',
        'coupler',
        'deadbolt',
        'cable-slack',
        'transport-pins',
      ]),
    );
  });
});

describe.each(IDS)('check %s', (id) => {
  const uses = usesOf(id);
  const definition = findCheck(id)!;

  it('speaks in words, briefly', () => {
    for (const {
      definition: { lines },
      scope,
    } of uses) {
      const spoken: CheckLines = lines(scope);
      for (const line of ['ask', 'askTerse', 'hint', 'why', 'mend'] as const) expect(spoken[line], line).toMatch(SPEAKABLE);
      if (spoken.caution !== null) expect(spoken.caution).toMatch(SPEAKABLE);
      expect(spoken.name).toMatch(/^[a-z][a-z -]*$/);
      for (const line of Object.values(spoken)) expect(line ?? '').not.toMatch(/\b[A-Z]{2,}\b|\bchecked\b|\betc\b|\bpsi\b/);
      const words = (text: string) => text.split(/\s+/).length;
      expect(words(spoken.askTerse), spoken.askTerse).toBeLessThanOrEqual(6);
      expect(words(spoken.ask), spoken.ask).toBeLessThanOrEqual(26);
      expect(words(spoken.name), spoken.name).toBeLessThanOrEqual(6);
      if (spoken.caution !== null) expect(words(spoken.caution), spoken.caution).toBeLessThanOrEqual(26);
      expect(spoken.hint).toContain('"');
    }
  });

  it('asks where it stands: the side or wheel is said', () => {
    for (const {
      definition: { lines },
      scope,
    } of uses) {
      if (scope.position === null || scope.unit.lift.cables === 1) continue;
      const place = scope.position.replace('-', ' ');
      expect(lines(scope).ask.toLowerCase()).toContain(place);
      expect(lines(scope).askTerse.toLowerCase()).toContain(place);
    }
  });

  it('is named and answered in plain lower-case words', () => {
    expect(definition.names.length).toBeGreaterThan(0);
    for (const name of definition.names) expect(name).toMatch(PHRASE);
    for (const { scope } of uses) for (const phrase of phrasesOf(definition.expects(scope))) expect(phrase).toMatch(PHRASE);
  });

  it('has answers that cannot be taken for each other, and labels that fit a button', () => {
    for (const { scope } of uses) {
      const expects = definition.expects(scope);
      if (expects.kind === 'state') {
        expect(expects.ok.length).toBeGreaterThanOrEqual(4);
        expect(expects.problem.length).toBeGreaterThanOrEqual(4);
        expect(expects.ok.filter((phrase) => expects.problem.includes(phrase))).toEqual([]);
        expect(new Set(expects.ok).size).toBe(expects.ok.length);
        expect(new Set(expects.problem).size).toBe(expects.problem.length);
        for (const [label] of [expects.ok, expects.problem]) expect(label!.split(' ').length, label).toBeLessThanOrEqual(3);
      }
      if (expects.kind === 'choice') {
        const all = expects.options.flatMap(({ phrases }) => phrases);
        expect(new Set(all).size).toBe(all.length);
        expect(expects.options.some(({ verdict }) => verdict === 'ok')).toBe(true);
        for (const { label, phrases } of expects.options) {
          expect(phrases[0]).toBe(label);
          expect(label.split(' ').length, label).toBeLessThanOrEqual(4);
        }
      }
    }
  });

  it('takes any physically possible reading, in units of one kind', () => {
    for (const { scope } of uses) {
      const expects = definition.expects(scope);
      if (expects.kind === 'count') expect(expects.min).toBe(0);
      if (expects.kind !== 'reading') continue;
      expect(expects.min).toBeLessThanOrEqual(expects.usual.min);
      expect(expects.usual.min).toBeLessThan(expects.usual.max);
      expect(expects.usual.max).toBeLessThanOrEqual(expects.max);
      expect(expects.step).toBeGreaterThan(0);
      expect(expects.forms.length).toBeGreaterThan(0);
      for (const other of expects.otherUnits) {
        expect(UNITS[other].dimension).toBe(UNITS[expects.unit].dimension);
        expect(other).not.toBe(expects.unit);
      }
    }
  });

  it('is judged by a rule for its kind of answer, no worse than it says', () => {
    for (const { scope } of uses) {
      const expects = definition.expects(scope);
      const spec = definition.judge(scope);
      expect(RANK[spec.worst]).toBe(RANK[definition.worst]);
      if (expects.kind === 'state') expect(spec.rule).toBe('state');
      if (expects.kind === 'choice') {
        expect(spec.rule).toBe('choice');
        for (const option of expects.options) {
          const outcome = spec.params[option.id];
          expect(['ok', 'watch', 'fix', 'hold'], option.id).toContain(outcome);
          expect(outcome === 'ok', option.id).toBe(option.verdict === 'ok');
        }
        const ranks = expects.options.map(({ id: option }) => RANK[spec.params[option] as keyof typeof RANK]);
        expect(Math.max(...ranks)).toBe(RANK[spec.worst]);
      }
      expect(JSON.parse(JSON.stringify(spec))).toEqual(spec);
    }
  });

  it('says where it comes from, and gives time for the work', () => {
    expect(definition.sources?.length).toBeGreaterThan(0);
    for (const { text } of definition.sources ?? []) expect(text.length).toBeGreaterThan(5);
    expect(definition.patienceS).toBeGreaterThanOrEqual(10);
    expect(definition.patienceS).toBeLessThanOrEqual(300);
  });
});

describe('faults that must be sayable', () => {
  const uses = (id: string) => usesOf(id).map(({ definition, scope }) => definition.expects(scope));

  it('a flat tire reads zero, a dead battery zero, an empty cylinder its tare', () => {
    for (const id of ['tire-pressure', 'battery-rest', 'breakaway-battery', 'tread-depth', 'ice-thickness', 'co-reading']) {
      for (const expects of uses(id)) expect(expects.kind === 'reading' && expects.min, id).toBe(0);
    }
    for (const expects of uses('cylinder-weight')) expect(expects.kind === 'reading' && expects.min <= 5).toBe(true);
  });

  it('forty below is a temperature', () => {
    for (const id of ['outside-temperature', 'inside-temperature-start', 'inside-temperature-after']) {
      for (const expects of uses(id)) {
        expect(expects.kind === 'reading' && expects.min <= -40, id).toBe(true);
        expect(expects.kind === 'reading' && expects.forms.includes('negative'), id).toBe(true);
      }
    }
  });

  it('the usual figures lie around the placard of the unit', () => {
    const kestrel = usesOf('tire-pressure').find(({ scope }) => scope.unit.id === 'demo-kestrel' && scope.display === 'us')!;
    const expects = kestrel.definition.expects(kestrel.scope);
    expect(expects.kind === 'reading' && expects.usual.min < 75 && expects.usual.max > 75).toBe(true);
  });
});

describe('cautions', () => {
  it.each([
    ['frame-raised', /nobody under/i],
    ['transport-pins', /under the frame/i],
    ['cable-slack', /never from under/i],
    ['lugs-moved', /slipping wrench|hot wheel/i],
    ['hub-heat', /burn/i],
    ['gas-smell', /no switch/i],
    ['heater-lit', /vent/i],
    ['co-quiet', /everyone out/i],
    ['co-reading', /everyone out/i],
    ['breakaway-test', /plug/i],
    ['broken-wires', /glove/i],
    ['hydraulics', /never feel/i],
    ['ice-thickness', /no ice is ever certain/i],
    ['ice-under', /nobody goes under/i],
    ['frozen-frame', /under it/i],
    ['coupler', /fingers/i],
    ['roof', /not from the roof/i],
  ])('%s is spoken with its caution', (id, words) => {
    const uses = usesOf(id);
    expect(uses.length).toBeGreaterThan(0);
    for (const { definition, scope } of uses) expect(definition.lines(scope).caution).toMatch(words);
  });
});
