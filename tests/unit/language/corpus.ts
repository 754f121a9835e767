/** Utterances with what they must mean, from the data files in `tests/corpus`, and how an answer is held against them. */
import { readFileSync } from 'node:fs';
import { findCheck } from '../../../src/domain/checks/catalogue.ts';
import type { CheckDefinition } from '../../../src/domain/checks/check.ts';
import type { Expects, Position } from '../../../src/domain/checks/expects.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { InterpretContext, Meaning, NamedCheck } from '../../../src/domain/language/meaning.ts';
import type { UnitId } from '../../../src/domain/quantity/units.ts';
import { createUnit } from '../../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../../src/domain/unit/templates.ts';

export type Level = 'plain' | 'natural' | 'hard' | 'refuse';

interface Expectation {
  readonly intent: Meaning['intent'];
  readonly readings?: readonly { readonly position: Position | null; readonly value: number; readonly unit: string }[];
  readonly hedged?: boolean;
  readonly verdict?: string;
  readonly option?: string;
  readonly value?: string;
  readonly command?: string;
  readonly text?: string;
  readonly yes?: boolean;
  readonly corrects?: string;
  readonly about?: string;
  readonly fromLast?: boolean;
  readonly moved?: boolean;
}

export interface Utterance {
  readonly id: string;
  readonly check: string;
  readonly text: string;
  readonly level: Level;
  readonly expect: Expectation;
  readonly context?: {
    readonly position?: Position;
    readonly positions?: readonly Position[];
    readonly last?: { readonly value: number; readonly unit: UnitId };
    readonly mode?: 'confirm';
    readonly previous?: Position;
    readonly previousValue?: { readonly value: number; readonly unit: UnitId };
    readonly others?: readonly string[];
  };
}

export function readUtterances(file: string): readonly Utterance[] {
  return readFileSync(new URL(`../../corpus/${file}.jsonl`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => JSON.parse(line) as Utterance);
}

const template = TEMPLATES[0];
if (!template) throw new Error('the corpus needs a template');
const UNIT = createUnit(template, { id: 'unit', name: 'Test unit', at: 0 });

const WHEELS: readonly Position[] = ['left-front', 'right-front', 'left-rear', 'right-rear'];
const SIDES: readonly Position[] = ['left', 'right'];

export function placesOf(definition: CheckDefinition): readonly Position[] {
  return definition.spread === 'wheel' ? WHEELS : definition.spread === 'side' ? SIDES : [];
}

export function definitionOf(check: string): CheckDefinition {
  const definition = findCheck(check);
  if (!definition) throw new Error(`the corpus asks for ${check}, which the catalogue does not have`);
  return definition;
}

export function expectsOf(definition: CheckDefinition, position: Position | null): Expects {
  return definition.expects({ unit: UNIT, round: definition.rounds[0] ?? 'before-towing', position, index: 0 });
}

function named(check: string, position: Position | null): NamedCheck {
  const definition = definitionOf(check);
  return {
    key: position === null ? check : `${check}@${position}`,
    names: definition.names,
    position,
    expects: expectsOf(definition, position),
  };
}

export function contextOf({ check, context = {} }: Pick<Utterance, 'check' | 'context'>): InterpretContext {
  const definition = definitionOf(check);
  const positions = context.positions ?? placesOf(definition);
  const position = context.position ?? positions[0] ?? null;
  return {
    expects: expectsOf(definition, position),
    names: definition.names,
    position,
    positions,
    others: (context.others ?? []).flatMap((other) => {
      const places = placesOf(definitionOf(other));
      return places.length === 0 ? [named(other, null)] : places.map((place) => named(other, place));
    }),
    last: context.last ?? null,
    previous: context.previous ? named(check, context.previous) : null,
    previousValue: context.previousValue ?? null,
    mode: context.mode ?? 'answer',
  };
}

/** What is wrong with what the interpreter says of an utterance; null where it is right. */
export function mistakeIn(utterance: Utterance): string | null {
  const context = contextOf(utterance);
  const got = interpret(utterance.text, context);
  const want = utterance.expect;
  const tell = (what: string) => `${utterance.check}: "${utterance.text}" ${what}; got ${describeMeaning(got)}`;
  if (got.intent !== want.intent) return tell(`should be ${want.intent} ${want.verdict ?? want.command ?? want.option ?? ''}`);
  if ((want.about ?? null) !== (got.about === null || want.corrects ? null : (got.about.split('@')[0] ?? null)))
    return tell(`is about ${want.about ?? 'the check asked'}`);
  if ((want.corrects ?? null) !== got.corrects) return tell(`corrects ${want.corrects ?? 'nothing'}`);
  if ((want.fromLast ?? false) !== (got.fromLast ?? false)) return tell('takes its value from last time');
  if (want.moved && got.movedFrom == null) return tell('moves a value');
  switch (got.intent) {
    case 'reading': {
      const asked = want.corrects === 'previous' ? null : context.position;
      const readings = want.readings ?? [];
      const fits =
        got.readings.length === readings.length &&
        readings.every(({ position, value, unit }) =>
          got.readings.some(
            (one) => (one.position ?? asked) === (position ?? asked) && Math.abs(one.value - value) < 1e-9 && one.unit === unit,
          ),
        );
      if (!fits) return tell(`should read ${JSON.stringify(readings)}`);
      return got.hedged === (want.hedged ?? false) ? null : tell(want.hedged ? 'is hedged' : 'is not hedged');
    }
    case 'verdict':
      if (want.option !== undefined) return got.option === want.option ? null : tell(`should be ${want.option}`);
      return got.verdict === want.verdict ? null : tell(`should be ${want.verdict}`);
    case 'date':
      return got.value === want.value ? null : tell(`should be ${want.value}`);
    case 'command':
      if (got.command !== want.command) return tell(`should be ${want.command}`);
      return want.text === undefined || got.text === want.text ? null : tell(`should carry "${want.text}"`);
    case 'confirmation':
      return got.yes === want.yes ? null : tell(`should be ${want.yes ? 'yes' : 'no'}`);
    case 'unclear':
      return null;
  }
}

/** Whether an utterance that must be refused would be kept as a value, a verdict or a date. */
export function isAccepted(meaning: Meaning): boolean {
  return (
    meaning.intent === 'reading' || meaning.intent === 'date' || (meaning.intent === 'verdict' && meaning.verdict !== 'unsure')
  );
}

function describeMeaning(meaning: Meaning): string {
  const { tokens: _tokens, ...rest } = meaning;
  return JSON.stringify(rest);
}

export interface Rate {
  readonly level: string;
  readonly right: number;
  readonly all: number;
  readonly mistakes: readonly string[];
}

export function rateOf(level: string, utterances: readonly Utterance[]): Rate {
  const mistakes = utterances.flatMap((utterance) => mistakeIn(utterance) ?? []);
  return { level, right: utterances.length - mistakes.length, all: utterances.length, mistakes };
}

export const percent = ({ right, all }: Pick<Rate, 'right' | 'all'>): string =>
  `${((100 * right) / Math.max(1, all)).toFixed(1)} %`;
