/**
 * Any transcript, in the context of a check, becomes meaning or an honest "unclear". Deterministic and without memory: the
 * same words in the same context always mean the same.
 */
import type { Expects, Position } from '../checks/expects.ts';
import { UNITS } from '../quantity/units.ts';
import { type Anchor, type Clause, cuttings, placesIn } from './breath.ts';
import { type FoundCommand, findCommand } from './commands.ts';
import { lexiconFor } from './conditionLexicon.ts';
import { type ConditionResult, parseCondition } from './conditions.ts';
import { parseDate } from './dates.ts';
import type { Command, InterpretContext, Meaning, NamedCheck, SpokenReading, UnclearWhy } from './meaning.ts';
import { phraseAt } from './phraseMatch.ts';
import { placeAt, resolvePlace } from './positions.ts';
import { parseReadings } from './readings.ts';
import { MAX_TEXT_LENGTH, plainWords, type Tokens, tokenize, type Word } from './tokens.ts';
import { Uses } from './uses.ts';
import { FILLERS, NO_WORDS, YES_WORDS } from './vocabulary.ts';

/** More words than this in one breath are no answer to a check. */
const LONGEST_ANSWER = 60;

interface Attempt {
  readonly text: string;
  readonly tokens: Tokens;
  readonly words: readonly Word[];
  readonly context: InterpretContext;
}

type Body = Meaning extends infer M
  ? M extends unknown
    ? Omit<M, 'tokens' | 'corrects' | 'about' | 'certainty'>
    : never
  : never;

/**
 * What `text` means where `context` is asked.
 * Cost: linear in the text, of which the first 2000 characters are read; well below a millisecond for a sentence.
 * @returns always a meaning; `unclear` where the words do not settle it. Never throws.
 */
export function interpret(text: string, context: InterpretContext): Meaning {
  const tokens = tokenize(text);
  const { words } = tokens;
  if (context.mode === 'free') return freeText(text, tokens);
  const attempt: Attempt = { text: text.slice(0, MAX_TEXT_LENGTH), tokens, words, context };
  if (words.every(({ kind }) => kind === 'mark')) return unclear(new Uses(tokens), 'empty');
  // "quiet" is an answer where it is one of the check's own words.
  const command = isOwnPhrase(words, context.expects) ? null : findCommand(words, context.names.map(plainWords));
  if (words.length > LONGEST_ANSWER && command?.command !== 'note' && command?.command !== 'skip')
    return unclear(new Uses(tokens), 'chatter');
  // "five minutes" is a value where a time is asked for.
  const isTime = context.expects.kind === 'reading' && UNITS[context.expects.unit].dimension === 'time';
  const timed = command?.command === 'wait' && isTime ? ownAnswer(attempt) : null;
  if (timed?.intent === 'reading') return timed;
  if (command) {
    const beside = answerBesideCommand(attempt, command);
    return beside ?? commandMeaning(attempt, command);
  }
  if (context.mode === 'confirm') {
    const confirmation = confirmationOf(attempt);
    if (confirmation) return confirmation;
  }
  const several = severalAnswers(attempt);
  if (several) return several;
  const named = namedAnswer(attempt);
  const own = ownAnswer(attempt);
  const answer = chooseBetween(own, named);
  // A number that begins with a "no" takes back the one before; a state that does answers the question.
  const isObjection = answer.intent === 'reading' || answer.intent === 'date' || answer.intent === 'unclear';
  const isPlaced =
    answer.intent === 'reading' && answer.readings.some(({ position }) => position !== null && position === context.position);
  if (isObjection && !isPlaced && answer.about === null) return correctionOfPrevious(attempt) ?? answer;
  return answer;
}

/** Whether the words are one of the check's own phrases and nothing else. */
function isOwnPhrase(words: readonly Word[], expects: Expects): boolean {
  if (expects.kind !== 'state' && expects.kind !== 'choice') return false;
  return lexiconFor(expects).exactly(words) !== null;
}

/** A note or a reason: every word is content, except a bare command to leave it. */
function freeText(text: string, tokens: Tokens): Meaning {
  const command = findCommand(tokens.words, []);
  const uses = new Uses(tokens);
  const isBare = command !== null && command.text === null && command.strangers === 0;
  if (isBare && (command.command === 'stop' || command.command === 'undo' || command.command === 'wait')) {
    uses.mark(command.from, command.next, 'command');
    return whole(uses, { intent: 'command', command: command.command, text: null }, 1);
  }
  const trimmed = text.trim();
  if (trimmed === '') return unclear(uses, 'empty');
  uses.mark(0, tokens.words.length, 'detail');
  return whole(uses, { intent: 'command', command: 'note', text: trimmed }, 1);
}

function commandMeaning({ text, tokens }: Attempt, found: FoundCommand): Meaning {
  const uses = new Uses(tokens);
  uses.mark(0, tokens.words.length, 'filler');
  uses.mark(found.from, found.next, 'command');
  let said: string | null = null;
  if (found.text) {
    uses.mark(found.text.from, found.text.to, 'detail');
    said = sliceOf(text, tokens, found.text.from, found.text.to);
  }
  const certainty = Math.max(0.6, 1 - 0.05 * Math.min(found.strangers, 8));
  return whole(uses, { intent: 'command', command: found.command, text: said }, certainty);
}

/** Commands that step aside for an answer in the same breath: "hold on, it's sixty-two", "sixty-two, next". */
const YIELDING: ReadonlySet<Command> = new Set(['wait', 'resume', 'next', 'undo']);

/** The answer beside a command, when it stands by itself and the command would lose it. */
function answerBesideCommand(attempt: Attempt, found: FoundCommand): Meaning | null {
  if (!YIELDING.has(found.command)) return null;
  const { words } = attempt;
  const rest =
    found.command === 'wait' || found.command === 'undo'
      ? words.slice(found.next)
      : [...words.slice(0, found.from), ...words.slice(found.next)];
  if (!rest.some(({ kind, word }) => kind !== 'mark' && !FILLERS.has(word))) return null;
  // "right rear, hang on, fifty-nine": what stands before belongs to the answer too.
  const entire = found.command === 'wait' && found.from > 0 ? ownAnswer(attempt) : null;
  const meaning = entire !== null && entire.intent === 'reading' ? entire : ownAnswer({ ...attempt, words: rest });
  if (meaning.intent === 'unclear' || meaning.intent === 'command' || meaning.certainty < 0.75) return null;
  if (meaning.intent === 'verdict' && meaning.verdict === 'unsure') return null;
  // "scratch that, sixty-two" is about what was just kept, where something was.
  if (found.command === 'undo' && attempt.context.previous && attempt.context.mode === 'answer') {
    return correctionOfPrevious({ ...attempt, words: rest }, true) ?? meaning;
  }
  return meaning;
}

const CONFIRM_SMALL = new Set(
  'that is it was the right good fine okay one please sir thanks thank you indeed what i said yes no not so and very much for sure all um uh'.split(
    ' ',
  ),
);

/** A bare yes or no, when the tool asked. */
function confirmationOf({ tokens, words, context }: Attempt): Meaning | null {
  const uses = new Uses(tokens);
  const said = words.filter(({ kind }) => kind !== 'mark').map(({ word }) => word);
  if (said.length > 7) return null;
  const text = said.join(' ');
  const isNo =
    said.some((word) => NO_WORDS.has(word)) ||
    / ?not (right|it|what i said|that)\b/.test(text) ||
    /^(it|that) is not$/.test(text);
  const isYes =
    said.some((word) => YES_WORDS.has(word)) ||
    /^(that is |that was )?(right|correct|it|good|fine|okay)$/.test(text) ||
    /^(you got it|you bet|sure is|it is|it does|they are|right|all right|okay|good|ten four|roger|copy|copy that|uh huh|mm hm|mhm|that is right|that is the one)$/.test(
      text,
    );
  const known = said.every(
    (word) =>
      CONFIRM_SMALL.has(word) ||
      YES_WORDS.has(word) ||
      NO_WORDS.has(word) ||
      /^(you|got|bet|does|they|are|uh|huh|mm|hm|mhm|ten|four|roger|copy)$/.test(word),
  );
  if (!known || isNo === isYes) return null;
  // "good" and "right" may be the answer itself: a state, a side.
  if (context.expects.kind !== 'reading' && context.expects.kind !== 'count' && /^(good|fine|okay|right)$/.test(text))
    return null;
  if (isNo) {
    uses.mark(0, words.length, 'negation');
    return whole(uses, { intent: 'confirmation', yes: false }, 1);
  }
  uses.mark(0, words.length, 'state');
  return whole(uses, { intent: 'confirmation', yes: true }, /^(okay|good|right|fine)$/.test(text) ? 0.85 : 1);
}

/** The answer to the check that was asked. */
function ownAnswer(attempt: Attempt): Meaning {
  const { context } = attempt;
  return answerTo(attempt, {
    expects: context.expects,
    names: context.names,
    position: context.position,
    positions: context.positions,
    last: context.last,
  });
}

interface Asked {
  readonly expects: Expects;
  readonly names: readonly string[];
  readonly position: Position | null;
  readonly positions: readonly Position[];
  readonly last: InterpretContext['last'];
}

/** The answer to one check, whichever it is. */
function answerTo(attempt: Attempt, asked: Asked): Meaning {
  const { tokens, words } = attempt;
  const uses = new Uses(tokens, words);
  const names = asked.names.map(plainWords).sort((a, b) => b.length - a.length);
  const { expects } = asked;
  if (isQuestion(words, tokens.asks) && !isOwnPhrase(words, expects)) return unclear(uses, 'chatter');
  switch (expects.kind) {
    case 'reading':
    case 'count': {
      if (isPlan(words)) return unclear(uses, 'chatter');
      const result = parseReadings({ words, expects, context: asked, names, uses });
      if (result.kind === 'unclear') return unclear(uses, result.why, result.candidates);
      const { readings, hedged, certainty, changes, fromLast } = result;
      const isNamed = changes && readings.some(({ position }) => position !== null);
      return {
        ...whole(uses, { intent: 'reading', readings, hedged }, certainty),
        corrects: isNamed ? 'named' : null,
        ...(fromLast ? { fromLast: true } : {}),
      };
    }
    case 'date': {
      const result = parseDate(words, expects, names, uses);
      if (result.kind === 'unclear') return unclear(uses, result.why);
      return whole(uses, { intent: 'date', value: result.value, hedged: result.hedged }, result.certainty);
    }
    case 'state':
    case 'choice': {
      if (saysSameAsLast(words)) return unclear(uses, 'no-last');
      const result = parseCondition({ words, expects, context: asked, names, uses });
      return conditionMeaning(attempt, result, uses);
    }
  }
}

function conditionMeaning({ text, tokens, words }: Attempt, result: ConditionResult, uses: Uses): Meaning {
  if (result.kind === 'unclear') return unclear(uses, result.why);
  const { verdict, option, positions, certainty } = result;
  let detail: string | null = null;
  if (result.detail) {
    const from = words[result.detail.from];
    const last = words[result.detail.to - 1];
    if (from && last) {
      const start = tokens.pieces[from.piece]?.start ?? 0;
      const lastPiece = tokens.pieces[last.piece];
      detail = text.slice(start, (lastPiece?.start ?? start) + (lastPiece?.text.length ?? 0)).trim() || null;
    }
    uses.mark(result.detail.from, result.detail.to, 'detail');
  }
  return whole(uses, { intent: 'verdict', verdict, option, positions, detail }, certainty);
}

const SAME_AS_LAST = [
  'same as last time',
  'same as before',
  'same as always',
  'same as ever',
  'same as the last time',
  'same as last round',
  'no change',
  'unchanged',
].map((phrase) => phrase.split(' '));

const saysSameAsLast = (words: readonly Word[]): boolean =>
  words.some((_, at) => SAME_AS_LAST.some((phrase) => phraseAt(words, at, phrase) !== null));

const ASKING = new Set([
  'is',
  'are',
  'was',
  'were',
  'did',
  'do',
  'does',
  'can',
  'could',
  'would',
  'will',
  'should',
  'have',
  'has',
  'what',
  'who',
  'where',
  'when',
  'how',
  'which',
  'whose',
]);
const ASKED = new Set([
  'it',
  'that',
  'this',
  'they',
  'you',
  'we',
  'i',
  'he',
  'she',
  'there',
  'the',
  'those',
  'these',
  'your',
  'my',
  'anybody',
  'anyone',
  'somebody',
  'is',
  'are',
  'much',
  'many',
  'about',
  'time',
  'one',
]);

/** "is it sixty-two?" asks somebody else. */
function isQuestion(words: readonly Word[], asks: boolean): boolean {
  const plain = words.filter(
    ({ kind, word }) => kind !== 'mark' && !/^(uh|um|hey|so|well|okay|and|but|oh|wait|er|ah|dad|mom|honey)$/.test(word),
  );
  const [first, second] = plain;
  if (!first || !second) return false;
  if (ASKING.has(first.word) && ASKED.has(second.word)) return true;
  // Written with a question mark: the writer is not sure either.
  return asks && ASKING.has(first.word);
}

const PLANS = [
  'if',
  'unless',
  'until',
  'tomorrow',
  'yesterday',
  'remember',
  'supposed',
  'should',
  'will',
  'would like',
  'want',
  'wants',
  'wanted',
  'need',
  'needs',
  'going to',
  'have to',
  'try',
  'let me',
  'give me',
  'hand me',
  'get me',
  'pass me',
  'bring',
  'be there',
  'was supposed',
  'it was last',
  'last year',
  'last week',
  'last month',
  'used to',
  'at a time',
  'by then',
].map((phrase) => phrase.split(' '));

/** A number that should be, was once, or is wished for is no reading. */
const isPlan = (words: readonly Word[]): boolean =>
  words.some((_, at) => PLANS.some((phrase) => phraseAt(words, at, phrase) !== null)) &&
  !words.some(({ word }, at) => word === 'want' && words[at + 1]?.word === 'to' && words[at + 2]?.word === 'say') &&
  !isChangeRequest(words);

/** "left rear should be fifty-five" corrects. */
const isChangeRequest = (words: readonly Word[]): boolean =>
  words.some(
    (_, at) => phraseAt(words, at, ['should', 'be']) !== null || phraseAt(words, at, ['should', 'have', 'been']) !== null,
  ) && words.some((_, at) => placeAt(words, at) !== null);

interface NameFound {
  readonly group: readonly NamedCheck[];
  readonly words: readonly Word[];
  readonly from: number;
  readonly next: number;
}

/** Another open check, answered by its name. */
function namedAnswer(attempt: Attempt): Meaning | null {
  const { context, words, tokens } = attempt;
  const open = context.others.filter(({ settled }) => settled !== true);
  const settled = asksForChange(words) ? context.others.filter((other) => other.settled === true) : [];
  const found = findName(attempt, open) ?? findName(attempt, settled);
  if (!found) return null;
  const { group } = found;
  const positions = [...new Set(group.flatMap(({ position }) => (position === null ? [] : [position])))];
  const [first] = group;
  if (!first) return null;
  const asked: Asked = {
    expects: first.expects,
    names: first.names,
    position:
      context.position !== null && positions.includes(context.position)
        ? context.position
        : positions.length === 1
          ? (positions[0] ?? null)
          : null,
    positions,
    last: null,
  };
  // A second name in the same breath: two answers that one meaning cannot hold.
  const rest = [...words.slice(0, found.from), ...words.slice(found.next)];
  const meaning = answerTo({ ...attempt, words: rest }, asked);
  if (meaning.intent === 'unclear') return { ...meaning, about: first.key };
  const said =
    meaning.intent === 'reading'
      ? meaning.readings.map(({ position }) => position)
      : meaning.intent === 'verdict'
        ? meaning.positions
        : [];
  const position = said.find((one) => one !== null) ?? asked.position;
  const target = group.find((one) => one.position === position) ?? (group.length === 1 ? first : undefined);
  if (!target) return unclear(new Uses(tokens), 'ambiguous');
  const corrects = target.settled === true ? 'named' : meaning.corrects;
  return { ...meaning, corrects, about: target.key, tokens: withName(meaning, tokens, words, found) };
}

function withName(meaning: Meaning, tokens: Tokens, words: readonly Word[], found: NameFound): Meaning['tokens'] {
  const pieces = new Set(words.slice(found.from, found.next).map(({ piece }) => piece));
  return meaning.tokens.map((use, index) => (pieces.has(index) && tokens.pieces[index] ? { ...use, use: 'name' } : use));
}

/** The longest name of another check in the words, with all checks that go by it. */
function findName({ context, words }: Attempt, others: readonly NamedCheck[]): NameFound | null {
  const own = new Set(context.names.map((name) => plainWords(name).join(' ')));
  let best: { name: string; length: number; from: number } | null = null;
  for (const { names } of others) {
    for (const name of names) {
      const parts = plainWords(name);
      if (parts.length === 0 || (best && parts.length <= best.length) || own.has(parts.join(' '))) continue;
      for (let at = 0; at + parts.length <= words.length; at += 1) {
        if (phraseAt(words, at, parts) === null) continue;
        best = { name: parts.join(' '), length: parts.length, from: at };
        break;
      }
    }
  }
  if (!best) return null;
  const chosen = best;
  const group = others.filter(({ names }) => names.some((name) => plainWords(name).join(' ') === chosen.name));
  const [first] = group;
  if (!first) return null;
  // Checks of different kinds that share a name cannot be told apart by it.
  const kind = JSON.stringify(first.expects.kind);
  const alike = group.every(({ expects }) => JSON.stringify(expects.kind) === kind);
  return alike ? { group, words, from: chosen.from, next: chosen.from + chosen.length } : null;
}

/**
 * Several statements in one breath. Null where the words are one statement, or say the same of every place that they name.
 * A breath that says different things of different places is never taken as one statement about all of them: where its parts
 * are not all clear, it is unclear.
 */
function severalAnswers(attempt: Attempt): Meaning | null {
  return severalPlaces(attempt) ?? severalChecks(attempt);
}

function severalPlaces(attempt: Attempt): Meaning | null {
  const { words, context, tokens } = attempt;
  if (context.expects.kind !== 'state' && context.expects.kind !== 'choice') return null;
  const anchors = placesIn(words);
  if (anchors.length < 2) return null;
  let isSplit = false;
  for (const clauses of cuttings(words, anchors)) {
    if (clauses.some(({ isBare }) => isBare)) continue;
    const meanings = clauses.map((clause) => ownAnswer({ ...attempt, words: clause.words }));
    const stated = clauses.flatMap((clause, index) => {
      const meaning = meanings[index];
      return meaning?.intent === 'verdict' && !clause.isDenial ? [meaning] : [];
    });
    const denials = clauses.filter(({ isDenial }) => isDenial).length;
    isSplit ||= denials > 0 || new Set(stated.map(({ verdict, option }) => `${verdict} ${option}`)).size > 1;
    const answers = clauses.map((clause, index) => (clause.isDenial ? denied(clause, stated, attempt) : meanings[index]));
    const clear = answers.flatMap((one) =>
      one?.intent === 'verdict' && one.verdict !== 'unsure' && one.certainty >= 0.75 ? [one] : [],
    );
    if (clear.length !== clauses.length) continue;
    const places = clear.flatMap(({ positions }) => positions);
    if (clear.some(({ positions }) => positions.length !== 1) || new Set(places).size !== places.length) continue;
    if (new Set(clear.map(({ verdict, option }) => `${verdict} ${option}`)).size === 1) return null;
    return together(clear);
  }
  return isSplit ? unclear(new Uses(tokens), 'ambiguous') : null;
}

/** "right not", beside "left pinned": the other of two states. A choice has more than one other. */
function denied(clause: Clause, stated: readonly Meaning[], attempt: Attempt): Meaning | null {
  const [first] = stated;
  if (first?.intent !== 'verdict' || attempt.context.expects.kind !== 'state') return null;
  if (stated.some((one) => one.intent !== 'verdict' || one.verdict !== first.verdict) || first.verdict === 'unsure') return null;
  const { context } = attempt;
  const [place] = placesIn(clause.words);
  const said = place ? placeAt(clause.words, place.from) : null;
  const resolved = said ? resolvePlace(said, context.positions, context.position, null) : null;
  if (resolved?.kind !== 'position') return null;
  const uses = new Uses(attempt.tokens, clause.words);
  uses.mark(0, clause.words.length, 'negation');
  if (place) uses.mark(place.from, place.next, 'position');
  const verdict = first.verdict === 'ok' ? 'problem' : 'ok';
  return whole(uses, { intent: 'verdict', verdict, option: null, positions: [resolved.position], detail: null }, 0.9);
}

/** The asked check and others by their names, or several others: "crossed, breakaway hooked on". */
function severalChecks(attempt: Attempt): Meaning | null {
  const { words } = attempt;
  const anchors = namesIn(attempt);
  const [first] = anchors;
  if (!first) return null;
  const lead = words.slice(0, first.from).filter(({ kind, word }) => kind !== 'mark' && !FILLERS.has(word) && word !== 'and');
  const all = lead.length > 0 ? [{ from: 0, next: 0 }, ...anchors] : anchors;
  if (all.length < 2) return null;
  for (const clauses of cuttings(words, all, 'name-first')) {
    if (clauses.some(({ isBare }) => isBare)) continue;
    const answers = clauses.map((clause) => {
      const part = { ...attempt, words: clause.words };
      return chooseBetween(ownAnswer(part), namedAnswer(part));
    });
    const isClear = answers.every(
      (one) =>
        (one.intent === 'verdict' ? one.verdict !== 'unsure' : one.intent === 'reading' || one.intent === 'date') &&
        one.certainty >= 0.9 &&
        one.corrects === null,
    );
    const targets = answers.map(({ about }) => about);
    if (isClear && new Set(targets).size === targets.length) return together(answers);
  }
  return null;
}

const CHANGES = ['change', 'correct', 'correction', 'make', 'should be', 'should have been', 'was wrong', 'is wrong'].map(
  (phrase) => phrase.split(' '),
);

/** "change the left tread to five": an answer that was given already is meant. */
const asksForChange = (words: readonly Word[]): boolean =>
  words.some((_, at) => CHANGES.some((phrase) => phraseAt(words, at, phrase) !== null));

/** Names of other checks in the words, with the place that stands right before one; each check once. */
function namesIn({ context, words }: Attempt): readonly Anchor[] {
  const own = new Set(context.names.map((name) => plainWords(name).join(' ')));
  const names = context.others
    .filter(({ settled }) => settled !== true)
    .flatMap(({ names: all }) => all.map(plainWords))
    .filter((parts) => parts.length > 0 && !own.has(parts.join(' ')))
    .sort((a, b) => b.length - a.length);
  const found: Anchor[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const start = at;
    const name = names.find((parts) => phraseAt(words, start, parts) !== null);
    if (!name) continue;
    const place = [2, 1].map((back) => (start >= back ? placeAt(words, start - back) : null)).find((one) => one?.next === start);
    found.push({ from: place?.from ?? start, next: start + name.length });
    at = start + name.length - 1;
  }
  return found;
}

function together(answers: readonly Meaning[]): Meaning | null {
  const [first, ...rest] = answers;
  if (!first) return null;
  const certainty = Math.min(...answers.map((one) => one.certainty));
  const tokens = first.tokens.map((use, index) => {
    const uses = answers.map((one) => one.tokens[index]).filter((one) => one !== undefined);
    return uses.find((one) => one.use !== 'ignored' && one.use !== 'filler') ?? use;
  });
  return { ...first, certainty, tokens, also: rest };
}

/** An answer with another check's name in it is about that one, unless the words are the asked check's very own. */
function chooseBetween(own: Meaning, named: Meaning | null): Meaning {
  if (named === null) return own;
  if (own.intent === 'unclear') return named.intent === 'unclear' && own.why !== 'chatter' ? own : named;
  if (named.intent === 'unclear') return own;
  if (own.intent === 'verdict' && own.certainty >= 0.99 && own.verdict !== 'unsure') return own;
  return named;
}

const OBJECTIONS = new Set([
  'no',
  'nope',
  'correction',
  'actually',
  'sorry',
  'wait',
  'wrong',
  'oops',
  'whoops',
  'negative',
  'change',
  'make',
  'fix',
  'correct',
]);

/** "no, sixty-three", "no, the right one", "change left rear to fifty-five": about what was kept before. */
function correctionOfPrevious(attempt: Attempt, objected = false): Meaning | null {
  const { context, words, tokens } = attempt;
  const { previous } = context;
  if (!previous || context.mode !== 'answer') return null;
  const plain = words.filter(({ kind, word }) => kind !== 'mark' && !/^(uh|um|oh|hey|okay|well|ah|er)$/.test(word));
  const [first] = plain;
  const objects = objected || (first !== undefined && OBJECTIONS.has(first.word));
  const changes = words.some(({ word }) => ['change', 'correct', 'fix', 'update', 'redo'].includes(word));
  if (!objects && !changes) return null;
  const start = first && OBJECTIONS.has(first.word) && !changes ? words.indexOf(first) + 1 : 0;
  const rest = words.slice(start);
  const positions = [...new Set([...(previous.position === null ? [] : [previous.position]), ...context.positions])];
  const moved = movedPlace(attempt, rest, previous, positions);
  if (moved) return moved;
  const isOnlyNo = rest.every(
    ({ kind, word }) => kind === 'mark' || FILLERS.has(word) || NO_WORDS.has(word) || OBJECTIONS.has(word),
  );
  if (isOnlyNo && (context.expects.kind === 'reading' || context.expects.kind === 'count' || context.expects.kind === 'date')) {
    if (first?.word !== 'no' && first?.word !== 'nope' && first?.word !== 'wrong') return null;
    const uses = new Uses(tokens);
    uses.mark(0, words.length, 'command');
    return whole(uses, { intent: 'command', command: 'undo', text: null }, 0.8);
  }
  const asked: Asked = { expects: previous.expects, names: previous.names, position: previous.position, positions, last: null };
  const meaning = answerTo({ ...attempt, words: rest }, asked);
  if (meaning.intent !== 'unclear' && meaning.intent !== 'command') {
    const isNamed = meaning.intent === 'reading' && meaning.readings.some(({ position }) => position !== null);
    return { ...meaning, corrects: isNamed && changes ? 'named' : 'previous', about: previous.key };
  }
  return null;
}

/** "no, the right one": the value stays, the place was wrong. */
function movedPlace(
  { tokens, context }: Attempt,
  rest: readonly Word[],
  previous: NamedCheck,
  positions: readonly Position[],
): Meaning | null {
  const at = rest.findIndex((_, index) => placeAt(rest, index) !== null);
  const place = at < 0 ? null : placeAt(rest, at);
  if (!place) return null;
  const others = rest.filter((word, index) => (index < place.from || index >= place.next) && word.kind !== 'mark');
  if (!others.every(({ word }) => FILLERS.has(word) || word === 'not')) return null;
  const resolved = resolvePlace(place, positions, previous.position, null);
  const uses = new Uses(tokens);
  uses.mark(0, tokens.words.length, 'correction');
  const value = context.previousValue ?? null;
  if (resolved.kind !== 'position' || resolved.position === previous.position) return unclear(uses, 'unknown-position');
  if (!value) return { ...unclear(uses, 'incomplete'), corrects: 'previous', about: previous.key };
  const reading: SpokenReading = { position: resolved.position, value: value.value, unit: value.unit, unitSaid: false };
  return {
    ...whole(uses, { intent: 'reading', readings: [reading], hedged: false }, 0.9),
    corrects: 'previous',
    about: previous.key,
    movedFrom: previous.position,
  };
}

function whole(uses: Uses, body: Body, certainty: number): Meaning {
  return { ...body, certainty, tokens: uses.list(), corrects: null, about: null } as Meaning;
}

function unclear(uses: Uses, why: UnclearWhy, candidates: readonly SpokenReading[] = []): Meaning {
  return whole(uses, { intent: 'unclear', why, candidates }, 0);
}

/** The transcript as it was written, from one word to another. */
function sliceOf(text: string, tokens: Tokens, from: number, to: number): string | null {
  const first = tokens.words[from];
  const last = tokens.words[to - 1];
  if (!first || !last) return null;
  const start = tokens.pieces[first.piece]?.start ?? 0;
  const end = tokens.pieces[last.piece];
  return text.slice(start, (end?.start ?? start) + (end?.text.length ?? 0)).trim() || null;
}
