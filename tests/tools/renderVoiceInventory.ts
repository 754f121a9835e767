/**
 * What the bundled voice must be able to say: every fixed line as a whole, and the words, numbers, units and places that
 * changing lines are joined from. Read from the sources themselves, so that a new line needs no second entry anywhere.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CATALOGUE } from '../../src/domain/checks/catalogue.ts';
import { POSITIONS } from '../../src/domain/checks/expects.ts';
import { instancesFor } from '../../src/domain/plan/instances.ts';
import { stationName } from '../../src/domain/plan/stationName.ts';
import { unknownsOf } from '../../src/domain/plan/unknowns.ts';
import { UNITS } from '../../src/domain/quantity/units.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';
import type { AxleCount, Unit } from '../../src/domain/unit/unit.ts';
import { lineKey, UNSAYABLE, wordsIn } from '../../src/speech/mouthClips/chooseClips.ts';
import { numberWords, type SpokenSentence, spokenSentences } from '../../src/speech/mouthClips/spokenWords.ts';

export interface Inventory {
  /** By key as in the pack; the sentence to render, with its pauses. */
  readonly lines: ReadonlyMap<string, SpokenSentence>;
  /** Words to be joined, with single spaces. */
  readonly parts: ReadonlySet<string>;
}

/** Every word in the sentences of these is wanted. */
const SOURCES = ['src/domain', 'machines', 'src/app', 'src/speech'];
const PASSED_OVER = /recogniser|worker|worklet|\/files\/|\/demo\/|mouthClips/;
/** Whole lines are wanted of those that write what is said during a round. */
const SPOKEN =
  /^machines|^src\/domain\/(checks|judge|plan|round|rehearsal|season|trend|history)\/|language\/(believe|questions|readBack|speakNumber)/;
const NEVER_SPOKEN = /sources\.ts$|catalogue\/|chartModel|rehearsal\/answers/;

/** Longer stretches of changing lines are put together from shorter ones; the file would grow for little. */
const LONGEST_PHRASE = 5;

/** Words of the trade and of every day that a person's own names and notes are likely to hold. */
const EVERYDAY = `
a about above across again air all alone along already also always an and another any are around as ask at away back bad
bag battery be bear because been before behind below beside best better between big bird black blue board boat bolt book
both box boy break bring broke brown bucket but buy by cabin call came can car castle cat change chain check child clean
clear cold come cool could cousin cover crack cut dad dark daughter day deep did different dirt do does dog done door down
dream drill drive drop dry duck each eagle early east easy edge eight else empty end enough even evening ever every eye
fall family far fast father few find fine fire first fish five fix flat floor fly follow food for found four fox free fresh
friend from front frost full fun game gas get girl give go gold gone good got grandpa grandma grass gray great green grey
ground had half hand hard has have hawk he head hear heat heavy help her here high hill him his hitch hold hole home hook
hot house how huge ice if in inside iron is island it its job just keep kept kid kind king knew know lake land large last
late lead leaf leak least left less let letter level light like line little live lodge long look loose lost lot loud low
lucky made mail make man many may me mean metal middle mild might mile milk mine minute miss mom moon more morning most
mother move moved much mud must my nail name near neck need never new next nice night nine no noise none north nose not note
nothing now number nut oak of off often oil old on once one only open or orange order other our out outside over own paint
pair part past people perch phone pick piece pike pin pine pink place plan play please point pond port post press pull push
put queen quick quiet quite rain ran rattle reach ready red rest rig right ring rise river road rock roof room rope rough
round run rust said salt same sand saw say sea seal second see seen seven shack shake shape sharp she shed shine ship shop
short should show shut side silver since sister sit six slack sleep slow small smell smoke snow so soft some son soon sound
south spare sparrow spot spring stand star start stay steel step still stone stop storm straight street strong such sugar
summer sun sure swan take talk tall tape tell ten test than thank that the their them then there these they thick thin thing
think third this those three through tie tight time tin tired to today together told tomorrow tonight too took tool top torn
touch tow town track trailer tree trip trouble truck true try turn two uncle under until up upper us use very visit voice
wait walk wall walleye want warm was wash water way we week well went west wet what wheel when where which while white who
whole why wide wife will wind window winter wire with without wolf wood word work worn would wrong yard year yellow yes
yesterday yet you young your zero degrees celsius fahrenheit hundred thousand million point minus plus over percent half
halves third thirds quarter quarters eighth eighths sixteenth sixteenths oh okay january february march april may june july
august september october november december monday tuesday wednesday thursday friday saturday sunday first second third
fourth fifth sixth`;

/** Everything, in an order that does not change from run to run. */
export function collectInventory(root: string): Inventory {
  const lines = new Map<string, SpokenSentence>();
  const parts = new Set<string>();
  const addParts = (text: string): void => {
    for (const sentence of spokenSentences(text)) for (const run of runsOf(sentence)) for (const word of run) parts.add(word);
  };
  const addLine = (text: string): void => {
    for (const sentence of spokenSentences(text)) {
      const count = wordsIn(sentence).length;
      if (count > 1 && count <= 40) lines.set(lineKey(sentence), sentence);
    }
    addParts(text);
  };
  const addPhrase = (text: string): void => {
    for (const sentence of spokenSentences(text)) {
      for (const run of runsOf(sentence)) if (run.length > 1 && run.length <= LONGEST_PHRASE) parts.add(run.join(' '));
    }
    addParts(text);
  };

  for (const text of plannedTexts()) {
    if (/[.?!]["”]?$/.test(text)) addLine(text);
    else addPhrase(text);
  }
  for (const { text, whole, spoken } of literalsUnder(root)) {
    // Elsewhere only sentences matter: single strings are names for the program.
    if (!spoken) {
      if (/\s/.test(text) && /[.?!]["”]?$/.test(text)) addParts(text);
    } else if (whole && /\s/.test(text) && /[.?!]["”]?$/.test(text)) addLine(text);
    else if (/\s/.test(text.trim())) addPhrase(text);
    else addParts(text);
  }
  addParts(EVERYDAY);
  addPhrase(UNSAYABLE);
  for (const { spoken } of Object.values(UNITS)) for (const text of spoken) addPhrase(text);
  for (const position of POSITIONS) addPhrase(position.replace('-', ' '));
  for (let value = 0; value <= 199; value++) parts.add(numberWords(String(value)).join(' '));
  for (let hundreds = 2; hundreds <= 9; hundreds++) parts.add(numberWords(String(hundreds * 100)).join(' '));
  for (let digit = 0; digit <= 9; digit++) parts.add(`point ${numberWords(String(digit)).join(' ')}`);
  for (const letter of 'ABCDEFGHIJKLMNOPQRSTUVWXYZ') parts.add(letter);
  for (const part of [...parts]) for (const word of part.split(' ')) parts.add(word);
  parts.delete('');
  return {
    lines: new Map([...lines].sort(([a], [b]) => (a < b ? -1 : 1))),
    parts: new Set([...parts].filter((part) => /^[a-zA-Z' ]+$/.test(part)).sort()),
  };
}

/** Words between two pauses, for clips that must not hold one. */
function runsOf({ items }: SpokenSentence): string[][] {
  const runs: string[][] = [[]];
  for (const item of items) {
    if ('word' in item) runs[runs.length - 1]?.push(item.word);
    else runs.push([]);
  }
  return runs;
}

const ROUNDS = ['before-towing', 'before-leaving-the-lake', 'stop-on-the-road'] as const;

/** Whatever a round's plan says, over all templates, rounds and builds. */
export function plannedTexts(): ReadonlySet<string> {
  const at = Date.UTC(2026, 0, 10);
  const texts = new Set<string>();
  for (const unit of units(at)) {
    for (const round of ROUNDS) {
      for (const display of ['us', 'metric'] as const) {
        for (const text of unknownsOf(unit, round)) texts.add(text);
        for (const { definition, scope, place } of instancesFor(CATALOGUE, unit, round, at, { display })) {
          if (!definition.applies(scope)) continue;
          for (const visit of [0, 1]) texts.add(stationName(place, visit));
          for (const text of Object.values(definition.lines(scope))) if (typeof text === 'string') texts.add(text);
          const expects = definition.expects(scope);
          // What the app itself says of an answer; the other ways of saying it are for people.
          if (expects.kind === 'state')
            for (const text of [expects.ok[0], expects.problem[0]]) if (text !== undefined) texts.add(text);
          if (expects.kind === 'choice') for (const { label } of expects.options) texts.add(label);
          if (expects.kind === 'count') for (const text of expects.noun) texts.add(text);
        }
      }
    }
  }
  return texts;
}

function units(at: number): readonly Unit[] {
  return TEMPLATES.flatMap((template, index) => {
    const unit = createUnit(template, { id: `unit-${index}`, name: 'Heron', at });
    const unknown: Unit = {
      ...unit,
      wheels: { ...unit.wheels, lugs: null, torqueNm: null, torqueSource: null, dotCodes: {} },
      tires: { ...unit.tires, placardColdPa: null },
      battery: { kind: null, capacityAh: null },
    };
    return ([1, 2, 3] as AxleCount[]).flatMap((axles) => [
      { ...unit, axles },
      { ...unknown, axles },
    ]);
  });
}

/** String and template literals of the spoken sources; of a template each stretch between two values. */
function* literalsUnder(root: string): Generator<{ text: string; whole: boolean; spoken: boolean }> {
  for (const folder of SOURCES) {
    const files = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).sort();
    for (const file of files) {
      const path = `${folder}/${file}`;
      if (!/\.tsx?$/.test(file) || PASSED_OVER.test(path)) continue;
      const spoken = SPOKEN.test(path) && !NEVER_SPOKEN.test(path);
      for (const literal of literalsIn(readFileSync(join(root, path), 'utf8'))) yield { ...literal, spoken };
    }
  }
}

/** A scanner for literals only: it knows comments, regular expressions, the three quotes and nested templates, and nothing else of the language. */
export function* literalsIn(source: string): Generator<{ text: string; whole: boolean }> {
  let at = 0;
  const depths: number[] = [];
  let depth = 0;
  const template = function* (): Generator<{ text: string; whole: boolean }> {
    const from = at;
    let text = '';
    const opened = source[from - 1] === '`';
    while (at < source.length) {
      const char = source[at] ?? '';
      if (char === '\\') {
        text += source[at + 1] ?? '';
        at += 2;
      } else if (char === '`') {
        at++;
        yield { text, whole: opened };
        return;
      } else if (char === '$' && source[at + 1] === '{') {
        at += 2;
        depths.push(depth);
        depth = 0;
        yield { text, whole: false };
        return;
      } else {
        text += char;
        at++;
      }
    }
  };
  while (at < source.length) {
    const char = source[at] ?? '';
    if (source.startsWith('//', at)) at = endOf(source, '\n', at);
    else if (source.startsWith('/*', at)) at = endOf(source, '*/', at);
    else if (char === '/' && /(?:[(,=:[!&|?{};]|=>|return)\s*$/.test(source.slice(Math.max(0, at - 12), at))) {
      const regex = /\/(?:\\.|\[(?:\\.|[^\]\n])*\]|[^/\\\n[])+\/[a-z]*/y;
      regex.lastIndex = at;
      at = regex.test(source) ? regex.lastIndex : at + 1;
    } else if (char === "'" || char === '"') {
      let text = '';
      at++;
      while (at < source.length && source[at] !== char && source[at] !== '\n') {
        if (source[at] === '\\') at++;
        text += source[at] ?? '';
        at++;
      }
      at++;
      if (!/^\.{0,2}\//.test(text) && !/[a-z][A-Z]|[{}<>=]/.test(text)) yield { text, whole: true };
    } else if (char === '`') {
      at++;
      yield* template();
    } else if (char === '{') {
      depth++;
      at++;
    } else if (char === '}') {
      at++;
      if (depth === 0 && depths.length > 0) {
        depth = depths.pop() ?? 0;
        yield* template();
      } else depth--;
    } else at++;
  }
}

function endOf(source: string, mark: string, from: number): number {
  const found = source.indexOf(mark, from);
  return found < 0 ? source.length : found + mark.length;
}
