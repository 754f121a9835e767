/**
 * One line of a batch, or one command line, as a context for the interpreter. Lines may come from anywhere: an unknown check
 * is matched by its words, a missing declaration is built from what the line says, and nothing here throws.
 */
import { CATALOGUE, findCheck } from '../../src/domain/checks/catalogue.ts';
import type { CheckDefinition } from '../../src/domain/checks/check.ts';
import {
  type ChoiceOption,
  type CountExpects,
  type Expects,
  type NumberForm,
  POSITIONS,
  type Position,
  type ReadingExpects,
  type StateExpects,
} from '../../src/domain/checks/expects.ts';
import { believe } from '../../src/domain/language/believe.ts';
import { interpret } from '../../src/domain/language/interpret.ts';
import type { InterpretContext, Meaning } from '../../src/domain/language/meaning.ts';
import { convert, isUnitId, toSI, UNITS, type UnitId } from '../../src/domain/quantity/units.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';

export interface InterpretLine {
  readonly id?: unknown;
  readonly check?: unknown;
  readonly position?: unknown;
  readonly unit?: unknown;
  readonly total?: unknown;
  readonly yes_means?: unknown;
  readonly last?: unknown;
  readonly expects?: unknown;
  readonly mode?: unknown;
  readonly text?: unknown;
}

export type Got = Readonly<Record<string, unknown>>;

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);
const textOf = (value: unknown): string | null => (typeof value === 'string' && value.trim() !== '' ? value : null);
const numberOf = (value: unknown): number | null => {
  const made = typeof value === 'string' && value.trim() !== '' ? Number(value) : value;
  return typeof made === 'number' && Number.isFinite(made) ? made : null;
};

/** What the line's text means, as the command line prints it. Never throws. */
export function interpretLine(line: unknown): Got {
  try {
    if (!isFields(line)) return { intent: 'unclear', why: 'not-a-line' };
    if (typeof line.text !== 'string') return { intent: 'unclear', why: 'no-text' };
    const asked = askedBy(line);
    const meaning = interpret(line.text, asked.context);
    const decision = believe({
      hearing: { hypotheses: [{ transcript: line.text, confidence: null }], provider: 'typed', clip: null },
      meanings: [meaning],
      context: asked.context,
      expectation: null,
      limitsAt: [],
      asked: 0,
      style: 'full',
    });
    return {
      ...meaningFields(meaning, asked.context.expects, asked.unit),
      ...(meaning.also ? { also: meaning.also.map((one) => meaningFields(one, asked.context.expects, asked.unit)) } : {}),
      certainty: Number(meaning.certainty.toFixed(3)),
      policy: decision.outcome,
      because: decision.because,
      ...(decision.question === null ? {} : { question: decision.question }),
    };
  } catch (problem) {
    return { intent: 'unclear', why: problem instanceof Error ? problem.message : 'failed' };
  }
}

/** @param unit the unit that the line asks its values in; null: as they were said */
function meaningFields(meaning: Meaning, expects: Expects, unit: UnitId | null): Got {
  const about = meaning.about === null ? {} : { about: meaning.about };
  const corrects = meaning.corrects === null ? {} : { corrects: meaning.corrects };
  switch (meaning.intent) {
    case 'reading':
      return {
        intent: 'reading',
        readings: meaning.readings.map((reading) => {
          const own = expects.kind === 'reading' ? expects.unit : 'count';
          const isQuantity = reading.unit !== 'count';
          const target = unit !== null && UNITS[unit].dimension === UNITS[reading.unit].dimension ? unit : reading.unit;
          const shown = round(convert(reading.value, reading.unit, target));
          return {
            position: reading.position,
            value: shown,
            unit: target,
            ...(target === reading.unit ? {} : { said: { value: reading.value, unit: reading.unit } }),
            ...(isQuantity ? { si: toSI(reading.value, reading.unit) } : {}),
            ...(isQuantity && UNITS[own].dimension === UNITS[reading.unit].dimension
              ? { inCheckUnit: round(convert(reading.value, reading.unit, own)) }
              : {}),
          };
        }),
        hedged: meaning.hedged,
        ...(meaning.fromLast ? { fromLast: true } : {}),
        ...about,
        ...corrects,
      };
    case 'verdict':
      return {
        intent: 'verdict',
        verdict: meaning.verdict,
        ...(meaning.option === null ? {} : { option: meaning.option }),
        ...(meaning.positions.length > 0 ? { positions: meaning.positions } : {}),
        ...(meaning.detail === null ? {} : { detail: meaning.detail }),
        ...about,
        ...corrects,
      };
    case 'date':
      return { intent: 'date', value: meaning.value, hedged: meaning.hedged, ...about, ...corrects };
    case 'command':
      return { intent: 'command', command: meaning.command, ...(meaning.text === null ? {} : { text: meaning.text }) };
    case 'confirmation':
      return { intent: 'confirmation', yes: meaning.yes };
    case 'unclear':
      return { intent: 'unclear', why: meaning.why };
  }
}

const round = (value: number) => Number(value.toPrecision(10));

interface Asked {
  readonly context: InterpretContext;
  readonly unit: UnitId | null;
}

export function askedBy(line: Fields): Asked {
  const id = textOf(line.check);
  const found = id === null ? null : matchCheck(id);
  const saidUnit = looseUnit(line.unit);
  const inline = line.expects === undefined || line.expects === null ? null : looseExpects(line.expects, line);
  const expects = inline ?? expectsFor(id, found, line, saidUnit);
  const position = loosePosition(line.position) ?? positionInId(id);
  const isPlaced = position !== null || found === null || found.spread === 'wheel' || found.spread === 'side';
  return {
    context: {
      expects,
      names: found?.names ?? (id === null ? [] : namesFromId(id)),
      position,
      positions: isPlaced ? POSITIONS : [],
      others: [],
      last: looseLast(line.last, expects, saidUnit),
      previous: null,
      mode: line.mode === 'confirm' || line.mode === 'free' ? line.mode : 'answer',
    },
    unit: saidUnit,
  };
}

const UNIT = createUnit(TEMPLATES[0] ?? failNoTemplate(), { id: 'unit', name: 'Unit', at: 0 });

function failNoTemplate(): never {
  throw new Error('there is no template to plan with');
}

function declared(definition: CheckDefinition): Expects {
  const position = definition.spread === 'wheel' || definition.spread === 'side' ? 'left' : null;
  return definition.expects({ unit: UNIT, round: definition.rounds[0] ?? 'before-towing', position, index: 0 });
}

/** The declaration of the line: the catalogue's, unless the line says that it asks for something else. */
function expectsFor(id: string | null, found: CheckDefinition | null, line: Fields, unit: UnitId | null): Expects {
  const total = numberOf(line.total);
  const known = found ? declared(found) : null;
  const yesMeans = line.yes_means === 'problem' ? 'problem' : line.yes_means === 'ok' ? 'ok' : null;
  if (total !== null || unit === 'count') {
    if (known?.kind === 'count') return { ...known, max: total ?? known.max };
    return count(total ?? 99);
  }
  if (unit !== null) {
    if (known?.kind === 'reading' && UNITS[known.unit].dimension === UNITS[unit].dimension) return inUnit(known, unit);
    return reading(unit, id ?? 'value');
  }
  if (yesMeans !== null)
    return known?.kind === 'state' ? { ...known, yesMeans } : known?.kind === 'choice' ? known : state(yesMeans);
  return known ?? guessed(id ?? '');
}

const idWords = (id: string): readonly string[] =>
  id
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');

/** Other words for the same thing, in ids. */
const SYNONYMS: Readonly<Record<string, string>> = {
  tyre: 'tire',
  tires: 'tire',
  psi: 'pressure',
  voltage: 'rest',
  volts: 'rest',
  volt: 'rest',
  lug: 'lugs',
  nuts: 'lugs',
  pins: 'pin',
  chain: 'chains',
  safety: 'chains',
  latched: 'coupler',
  hitch: 'coupler',
  temp: 'temperature',
  furnace: 'inside',
  interior: 'inside',
  indoor: 'inside',
  ambient: 'outside',
  outdoor: 'outside',
  air: 'outside',
  pulley: 'pulleys',
  vents: 'vent',
  window: 'windows',
  lights: 'lamps',
  light: 'lamps',
  monoxide: 'co',
  propane: 'cylinder',
  tank: 'cylinder',
  lp: 'cylinder',
  wires: 'wires',
  strands: 'wires',
  bolt: 'deadbolt',
};
const PLACE_WORDS = new Set([
  'left',
  'right',
  'front',
  'rear',
  'middle',
  'back',
  'side',
  'lf',
  'rf',
  'lr',
  'rr',
  'driver',
  'passenger',
]);

/** The check with this id, or the one whose words fit it clearly best. */
export function matchCheck(id: string): CheckDefinition | null {
  const exact = findCheck(id) ?? findCheck(idWords(id).join('-'));
  if (exact) return exact;
  const words = idWords(id).filter((word) => !PLACE_WORDS.has(word));
  if (words.includes('torque')) return null;
  const normal = words.map((word) => SYNONYMS[word] ?? word);
  let best: { definition: CheckDefinition; score: number } | null = null;
  for (const definition of CATALOGUE) {
    const own = new Set([...idWords(definition.id), ...idWords(definition.id).map((word) => SYNONYMS[word] ?? word)]);
    const byName = new Set(definition.names.flatMap(idWords));
    let score = 0;
    for (const [index, word] of normal.entries()) score += own.has(word) ? 2 : byName.has(words[index] ?? word) ? 1 : -0.75;
    score -= 0.25 * Math.max(0, idWords(definition.id).length - normal.length);
    if (!best || score > best.score) best = { definition, score };
  }
  return best && best.score >= Math.max(1.25, normal.length) ? best.definition : null;
}

function positionInId(id: string | null): Position | null {
  if (id === null) return null;
  const words = idWords(id);
  const abbreviations: Readonly<Record<string, Position>> = {
    lf: 'left-front',
    rf: 'right-front',
    lr: 'left-rear',
    rr: 'right-rear',
  };
  for (const word of words) if (abbreviations[word]) return abbreviations[word] ?? null;
  return loosePosition(words.filter((word) => PLACE_WORDS.has(word)).join('-'));
}

function loosePosition(value: unknown): Position | null {
  const words = idWords(textOf(value) ?? '').map((word) =>
    word === 'back' ? 'rear' : word === 'driver' ? 'left' : word === 'passenger' ? 'right' : word,
  );
  const short: Readonly<Record<string, Position>> = {
    lf: 'left-front',
    fl: 'left-front',
    rf: 'right-front',
    fr: 'right-front',
    lr: 'left-rear',
    rl: 'left-rear',
    rr: 'right-rear',
  };
  if (words.length === 1 && short[words[0] ?? '']) return short[words[0] ?? ''] ?? null;
  const side = words.find((word) => word === 'left' || word === 'right');
  const end = words.find((word) => word === 'front' || word === 'rear' || word === 'middle');
  const made = [side, end].filter(Boolean).join('-');
  return POSITIONS.find((position) => position === made) ?? null;
}

const UNIT_NAMES: Readonly<Record<string, UnitId>> = {
  'ft-lb': 'lb-ft',
  'ft-lbs': 'lb-ft',
  'foot-pounds': 'lb-ft',
  ftlb: 'lb-ft',
  'ft lb': 'lb-ft',
  'lbs-ft': 'lb-ft',
  'lb ft': 'lb-ft',
  nm: 'N-m',
  n·m: 'N-m',
  'n-m': 'N-m',
  'newton-meters': 'N-m',
  '32nd': '32nds',
  '/32': '32nds',
  '1/32': '32nds',
  '1/32 in': '32nds',
  'thirty-seconds': '32nds',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  volt: 'V',
  volts: 'V',
  v: 'V',
  degf: 'F',
  '°f': 'F',
  f: 'F',
  fahrenheit: 'F',
  degc: 'C',
  '°c': 'C',
  c: 'C',
  celsius: 'C',
  lbs: 'lb',
  pounds: 'lb',
  '%': 'percent',
  kpa: 'kPa',
  feet: 'ft',
  foot: 'ft',
  minutes: 'min',
  hours: 'h',
  amps: 'A',
  each: 'count',
  pcs: 'count',
  '#': 'count',
};

export function looseUnit(value: unknown): UnitId | null {
  const text = textOf(value);
  if (text === null) return null;
  if (isUnitId(text)) return text;
  return (
    UNIT_NAMES[text.trim().toLowerCase()] ??
    Object.values(UNITS).find(({ id }) => id.toLowerCase() === text.trim().toLowerCase())?.id ??
    null
  );
}

/** What is physically possible, wide, where nothing is declared. */
const WIDE: Partial<Readonly<Record<UnitId, readonly [min: number, max: number, step: number, forms: readonly NumberForm[]]>>> = {
  psi: [0, 200, 0.5, ['whole', 'half', 'tenth']],
  kPa: [0, 1400, 1, ['whole']],
  bar: [0, 14, 0.1, ['whole', 'tenth', 'spoken-decimal']],
  'lb-ft': [0, 400, 1, ['whole', 'half']],
  'N-m': [0, 550, 1, ['whole']],
  '32nds': [0, 32, 0.5, ['whole', 'half', 'thirty-second']],
  mm: [0, 2000, 0.5, ['whole', 'half', 'tenth']],
  cm: [0, 500, 0.5, ['whole', 'half', 'tenth']],
  in: [0, 240, 0.0625, ['whole', 'half', 'quarter', 'tenth']],
  ft: [0, 100, 0.25, ['whole', 'half', 'quarter']],
  F: [-80, 200, 1, ['whole', 'negative', 'half']],
  C: [-62, 95, 0.5, ['whole', 'negative', 'half', 'tenth']],
  V: [0, 60, 0.01, ['whole', 'tenth', 'hundredth', 'spoken-decimal']],
  lb: [0, 50_000, 0.5, ['whole', 'half', 'tenth']],
  kg: [0, 25_000, 0.1, ['whole', 'half', 'tenth']],
  ppm: [0, 5000, 1, ['whole']],
  percent: [0, 100, 1, ['whole', 'half', 'tenth']],
  h: [0, 10_000, 0.5, ['whole', 'half', 'quarter']],
  min: [0, 10_000, 0.5, ['whole', 'half', 'quarter']],
};

function reading(unit: UnitId, quantity: string): ReadingExpects {
  const [min, max, step, forms] = WIDE[unit] ?? [0, 100_000, 0.1, ['whole', 'half', 'tenth'] as const];
  const others = Object.values(UNITS).filter(({ id, dimension }) => id !== unit && dimension === UNITS[unit].dimension);
  return { kind: 'reading', quantity, unit, otherUnits: others.map(({ id }) => id), min, max, step, forms, usual: { min, max } };
}

function inUnit(known: ReadingExpects, unit: UnitId): ReadingExpects {
  if (unit === known.unit) return known;
  const [min, max] = [convert(known.min, known.unit, unit), convert(known.max, known.unit, unit)];
  const wide = reading(unit, known.quantity);
  return { ...wide, min, max, usual: { min, max } };
}

const count = (total: number): CountExpects => ({
  kind: 'count',
  quantity: 'count',
  noun: ['one', 'ones'],
  min: 0,
  max: Math.max(0, Math.round(total)),
  nonePhrases: ['none', 'none moved', 'all tight', 'nothing moved'],
  allPhrases: ['all of them', 'all moved', 'every one moved'],
});

const state = (
  yesMeans: 'ok' | 'problem',
  ok: readonly string[] = ['okay', 'good'],
  problem: readonly string[] = ['not okay', 'bad'],
): StateExpects => ({
  kind: 'state',
  ok,
  problem,
  yesMeans,
});

/** What an id alone lets one expect. */
function guessed(id: string): Expects {
  const words = new Set(idWords(id));
  const has = (...some: readonly string[]) => some.some((word) => words.has(word));
  if (has('torque')) return reading('lb-ft', id);
  if (has('pressure', 'psi')) return reading('psi', id);
  if (has('tread')) return reading('32nds', id);
  if (has('temperature', 'temp')) return reading('F', id);
  if (has('voltage', 'volts', 'volt')) return reading('V', id);
  if (has('weight', 'load')) return reading('lb', id);
  if (has('ppm')) return reading('ppm', id);
  if (has('thickness', 'gap', 'clearance', 'height', 'length')) return reading('in', id);
  if (has('count', 'moved', 'number')) return count(99);
  if (has('dot', 'week')) return { kind: 'date', form: 'dot-week' };
  if (has('date', 'expiry', 'expires')) return { kind: 'date', form: 'month-year' };
  return state('ok');
}

const namesFromId = (id: string): readonly string[] => {
  const words = idWords(id).filter((word) => !PLACE_WORDS.has(word));
  return words.length === 0 ? [] : [words.join(' '), ...words.filter((word) => word.length > 3)];
};

function looseLast(value: unknown, expects: Expects, unit: UnitId | null): InterpretContext['last'] {
  const fallback = unit ?? (expects.kind === 'reading' ? expects.unit : 'count');
  if (isFields(value)) {
    const made = numberOf(value.value);
    return made === null ? null : { value: made, unit: looseUnit(value.unit) ?? fallback };
  }
  const plain = numberOf(value);
  if (plain !== null) return { value: plain, unit: fallback };
  const said = /^\s*(-?\d+(?:\.\d+)?)\s*(\S+)?\s*$/.exec(textOf(value) ?? '');
  return said?.[1] ? { value: Number(said[1]), unit: looseUnit(said[2]) ?? fallback } : null;
}

const listOf = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : [];

/** Our own declaration, or anything that sensibly stands for one; null where it says nothing. */
export function looseExpects(value: unknown, line: Fields = {}): Expects | null {
  if (typeof value === 'string') return looseExpects({ kind: value }, line);
  if (Array.isArray(value)) return looseExpects({ kind: 'choice', options: value }, line);
  if (!isFields(value)) return null;
  const kind = String(value.kind ?? value.type ?? '')
    .toLowerCase()
    .replace(/[^a-z]/g, '');
  const unit = looseUnit(value.unit ?? line.unit);
  const min = numberOf(value.min ?? (Array.isArray(value.range) ? value.range[0] : undefined));
  const max = numberOf(value.max ?? (Array.isArray(value.range) ? value.range[1] : undefined));
  const total = numberOf(value.total ?? line.total);
  if (
    /^(state|yesno|bool|boolean|verdict|okproblem|status|condition)$/.test(kind) ||
    (kind === '' && (value.ok || value.problem || value.yes_means || value.yesMeans))
  ) {
    const ok = listOf(value.ok);
    const problem = listOf(value.problem ?? value.bad);
    const yes = value.yesMeans ?? value.yes_means ?? line.yes_means;
    return state(yes === 'problem' ? 'problem' : 'ok', ok.length > 0 ? ok : undefined, problem.length > 0 ? problem : undefined);
  }
  const options = Array.isArray(value.options) ? value.options : Array.isArray(value.choices) ? value.choices : null;
  if (/^(choice|oneof|enum|select|option|options)$/.test(kind) || (kind === '' && options)) {
    return { kind: 'choice', options: (options ?? []).flatMap(looseOption) };
  }
  if (/^(count|howmany)$/.test(kind) || unit === 'count' || (kind === '' && total !== null)) {
    const noun = Array.isArray(value.noun) ? listOf(value.noun) : [];
    return {
      ...count(total ?? max ?? 99),
      min: min ?? 0,
      ...(noun[0] ? { noun: [noun[0], noun[1] ?? `${noun[0]}s`] as const } : {}),
      ...(Array.isArray(value.nonePhrases) ? { nonePhrases: listOf(value.nonePhrases) } : {}),
      ...(Array.isArray(value.allPhrases) ? { allPhrases: listOf(value.allPhrases) } : {}),
    };
  }
  if (kind === 'date' || kind === 'dotweek' || kind === 'monthyear' || kind === 'week') {
    const form = String(value.form ?? kind);
    return { kind: 'date', form: /dot|week/.test(form) ? 'dot-week' : 'month-year' };
  }
  if (unit !== null || /^(reading|number|numeric|value|quantity|measurement|integer|float|decimal)$/.test(kind)) {
    const base = reading(unit ?? 'psi', String(value.quantity ?? 'value'));
    const usual = isFields(value.usual) ? value.usual : {};
    const lowest = min ?? base.min;
    const highest = max ?? base.max;
    const forms = listOf(value.forms) as NumberForm[];
    return {
      ...base,
      min: lowest,
      max: highest,
      step: numberOf(value.step) ?? base.step,
      forms: forms.length > 0 ? forms : lowest < 0 ? [...base.forms, 'negative'] : base.forms,
      usual: { min: numberOf(usual.min) ?? lowest, max: numberOf(usual.max) ?? highest },
    };
  }
  return null;
}

/** An option that says nothing of its verdict is judged by its own words: "closed" is right, "open" is not. */
function verdictInWords(label: string): 'ok' | 'problem' {
  const context: InterpretContext = {
    expects: state('ok'),
    names: [],
    position: null,
    positions: [],
    others: [],
    last: null,
    previous: null,
    mode: 'answer',
  };
  const meaning = interpret(label, context);
  return meaning.intent === 'verdict' && meaning.verdict === 'problem' ? 'problem' : 'ok';
}

function looseOption(value: unknown): readonly ChoiceOption[] {
  if (typeof value === 'string') {
    return [{ id: value, label: value, phrases: [value], verdict: verdictInWords(value) }];
  }
  if (!isFields(value)) return [];
  const id = textOf(value.id) ?? textOf(value.label) ?? textOf(value.value);
  if (id === null) return [];
  const label = textOf(value.label) ?? id;
  const phrases = listOf(value.phrases ?? value.words);
  return [
    { id, label, phrases: phrases.length > 0 ? phrases : [label], verdict: value.verdict === 'problem' ? 'problem' : 'ok' },
  ];
}
