/** What may be said at any time: "hold on a second", "skip it, frozen shut", "make a note frayed near the drum". */
import type { Command } from './meaning.ts';
import { PhraseTable } from './phraseMatch.ts';
import type { Word } from './tokens.ts';
import { ASIDE_WORDS } from './vocabulary.ts';

/**
 * How much else may be said beside it. `alone`: nothing but small words. `anywhere`: inside a sentence. `text`: what
 * follows belongs to it.
 */
type Room = 'alone' | 'anywhere' | 'text';

interface CommandPhrase {
  readonly command: Command;
  readonly room: Room;
}

const PHRASES: readonly (readonly [command: Command, room: Room, phrases: string])[] = [
  [
    'repeat',
    'anywhere',
    'say again|say that again|say it again|repeat that|repeat the question|repeat it|come again|one more time|once more|once again|what was that|what did you say|did not catch that|did not get that|did not hear that|did not hear you|could not hear that|missed that|i missed that|read that again|again please|what was the question|what is the question|tell me again|ask me again|ask again|run that by me again',
  ],
  [
    'repeat',
    'alone',
    'repeat|again|pardon|pardon me|huh|what|say what|sorry what|what now|come again|sorry|how is that|what was it',
  ],
  [
    'back',
    'anywhere',
    'go back|back up|previous one|previous check|previous question|the one before|the last one again|go to the last one|go to the previous|step back|back to the last one|take me back',
  ],
  ['back', 'alone', 'back|previous|last one|one back|back one|backward|backwards'],
  [
    'skip',
    'text',
    'skip it|skip this one|skip that one|skip this|skip that|skip the rest|skip for now|skip check|skip the check|skip|pass on this one|pass on that one|pass on this|pass on that|leave it for now|leave this one|leave that one|come back to it later|come back to this|come back to that|do it later|i will do it later|do that later|do this later|get it later|later',
  ],
  [
    'wait',
    'anywhere',
    'hold on|hang on|hold up|hold it|wait a minute|wait a second|wait a sec|wait a moment|wait a bit|give me a minute|give me a second|give me a sec|give me a moment|just a minute|just a second|just a sec|just a moment|one second|one sec|one moment|one minute|a second please|a moment please|half a second|half a minute|be right back|i will be right back|take a break|taking a break|need a minute|need a second|need a moment|bear with me|stand by|standby|time out|not ready|i am not ready|not ready yet|stay there|phone is ringing|got a call|pause the round|pause this|pause it|give me a few|two seconds|two minutes|five minutes|two secs|back in a minute|back in a second|got to take this',
  ],
  ['wait', 'alone', 'wait|pause|hold|hold please|wait up|whoa'],
  [
    'resume',
    'anywhere',
    'carry on|keep going|i am back|we are back|back again now|pick up where we left off|where we left off|start again|lets continue|let us continue|let us go on|let us keep going|ready to go on|ready to continue|unpause',
  ],
  [
    'resume',
    'alone',
    'resume|continue|go on|go ahead|proceed|ready|i am ready|ready when you are|all set|let us go|ready now|go',
  ],
  [
    'undo',
    'anywhere',
    'undo that|undo it|undo the last|take that back|take it back|scratch that|strike that|forget that|delete that|erase that|cancel that|remove that|that is wrong|that was wrong|that is not right|that is not what i said|not what i said|i did not say that|you got that wrong|wrong number|that is incorrect|disregard that|ignore that',
  ],
  ['undo', 'alone', 'undo|wrong|cancel|erase|delete|disregard|never mind|incorrect|scratch it'],
  [
    'where',
    'anywhere',
    'where was i|where am i|where are we|where were we|what is left|what is still left|how many left|how many are left|how many more|how much is left|how much longer|how far along|how far are we|what is open|what is missing still|which one are we on|what are we on|what check is this|which check is this|which wheel is this|which tire is this|what am i doing|what are we doing|how many to go|where we at|where are we at|what is still open|status report',
  ],
  ['where', 'alone', 'where|status|progress|what is remaining'],
  [
    'note',
    'text',
    'make a note that|make a note of|make a note|take a note that|take a note|add a note that|add a note|add note|new note|make note that|make note of|make note|note that|note to self|write down that|write down|write that down|write this down|jot down|jot that down|put down that|for the record|leave a note|record a note|remember that|note',
  ],
  [
    'louder',
    'anywhere',
    'speak up|turn it up|turn up the volume|turn yourself up|volume up|more volume|can not hear you|talk louder|a little louder|bit louder|much louder|crank it up|raise the volume|too quiet',
  ],
  ['louder', 'alone', 'louder|up the volume|louder please'],
  [
    'quieter',
    'anywhere',
    'turn it down|turn down the volume|volume down|not so loud|too loud|less volume|talk softer|quiet down|a little quieter|bit quieter|much quieter|keep it down|lower the volume|talk quieter',
  ],
  ['quieter', 'alone', 'quieter|softer|quiet|quieter please|lower|hush'],
  [
    'stop',
    'anywhere',
    'stop listening|stop the round|stop talking|end the round|end this|end it|stop this|stop it|quit the round|abort the round|that is enough|that is it for today|that is it for now|call it a day|i want to stop|we are done here|be done',
  ],
  ['stop', 'alone', 'stop|quit|end|abort|shut up|exit|finish|enough|i am done|done for now|all done for now|stop now'],
  [
    'help',
    'anywhere',
    'what can i say|what do i say|what should i say|what do i do|what do you want|what are you asking|what are my options|what are the options|what do you mean|how do i answer|how do i do this|how do i do that|how do i check|how do i measure|i need help|i am confused|i do not understand|what are the choices|what commands',
  ],
  ['help', 'alone', 'help|help me|options|commands|how|how so|help please|give me a hint|hint'],
  [
    'why',
    'anywhere',
    'how come you need|why do you need to know|why is that|why does it matter|why does that matter|why do i|why do we|why should i|why are we|why are you asking|why do you ask|why do you need|why ask|why does this matter|what is the point|what is this for|what is that for|why check|why is this|why would i|why bother',
  ],
  ['why', 'alone', 'why|why though|how come|what for|why not'],
  [
    'next',
    'anywhere',
    'next one|next check|next question|next item|next please|move on|moving on|go to the next|go on to the next|on to the next|let us move on|leave it at that|keep it as it is|leave it as it is',
  ],
  ['next', 'alone', 'next|forward|go forward|onward|moving along'],
];

const TABLE = new PhraseTable<CommandPhrase>(
  PHRASES.flatMap(([command, room, phrases]) =>
    phrases.split('|').map((phrase) => [phrase.replace(/^lets /, 'let us ').split(' '), { command, room }] as const),
  ),
);

/** Small words that may stand around a command. */
const SMALL = new Set(
  'a an the uh um er ah hey okay so well please now just then and but oh yes yeah thanks thank you i we me it that this there here to for with can could would you let us need want got have gotta will am is are minute second moment sec bit little again real quick quickly really all right again yet go lets like think should guys everybody everyone say said tell my mind sir today enough hear one check question round more still because cause since'.split(
    ' ',
  ),
);

export interface FoundCommand {
  readonly command: Command;
  /** First and last word of the phrase itself. */
  readonly from: number;
  readonly next: number;
  /** Words that belong to neither the phrase nor the small words. */
  readonly strangers: number;
  /** For a note or the reason of a skip: where its words begin and end. */
  readonly text: { readonly from: number; readonly to: number } | null;
}

const NEGATORS = new Set(['not', 'no', 'never']);

/**
 * The command in a row of words, or null. A command that is only spoken about ("don't stop", "I can't wait") is none.
 * @param objects names of the checks that may be asked to be skipped: "skip the coupler"
 */
export function findCommand(words: readonly Word[], objects: readonly (readonly string[])[]): FoundCommand | null {
  for (let at = 0; at < words.length; at += 1) {
    const found = TABLE.at(words, at);
    if (!found) continue;
    const { command, room } = found.value;
    if (isNegated(words, at)) continue;
    const strangers = strangersBeside(words, at, found.next);
    if (room === 'text') {
      const made = withText(words, at, found.next, command, objects);
      if (made) return made;
      continue;
    }
    if (room === 'alone') {
      const others = words.filter((word, index) => word.kind !== 'mark' && (index < at || index >= found.next));
      const isAlone = others.every((word) => SMALL.has(word.word) && !isContentful(word.word));
      const isWork =
        (command === 'repeat' || command === 'wait') && others.some(({ word }) => /^(check|let|this|it)$/.test(word));
      if (!isAlone || isWork) continue;
      return { command, from: at, next: found.next, strangers: 0, text: null };
    }
    const limit = command === 'wait' ? Number.POSITIVE_INFINITY : 1;
    if (strangers.before + strangers.after > limit) continue;
    // "hold on" deep inside a story is part of the story.
    if (command === 'wait' && strangers.before > 2) continue;
    return { command, from: at, next: found.next, strangers: strangers.before + strangers.after, text: null };
  }
  return null;
}

/** "can you", "let us", "I want to" go with a bare command; "to" and "for" do not go with a bare "stop". */
const isContentful = (word: string) =>
  word === 'think' || word === 'like' || word === 'said' || word === 'tell' || word === 'mind';

function isNegated(words: readonly Word[], at: number): boolean {
  const before = words[at - 1]?.word ?? '';
  if (NEGATORS.has(before)) return true;
  return (
    NEGATORS.has(words[at - 2]?.word ?? '') &&
    ['to', 'want', 'need', 'can', 'going', 'you', 'just', 'even', 'really'].includes(before)
  );
}

function strangersBeside(words: readonly Word[], from: number, next: number): { before: number; after: number } {
  let before = 0;
  let after = 0;
  // The same wish put twice ("speak up, I can't hear you") is no stranger to itself.
  const isCovered = coveredBy(words, TABLE.at(words, from)?.value.command ?? null);
  for (const [index, word] of words.entries()) {
    if (word.kind === 'mark' || (index >= from && index < next) || SMALL.has(word.word) || isCovered[index]) continue;
    if (index < from) before += 1;
    else after += 1;
  }
  return { before, after };
}

function coveredBy(words: readonly Word[], command: Command | null): readonly boolean[] {
  const covered = words.map(() => false);
  for (let at = 0; at < words.length; at += 1) {
    const found = TABLE.at(words, at);
    if (found?.value.command === command) covered.fill(true, at, found.next);
  }
  return covered;
}

/** Before a note or a skip only small words may stand. */
function withText(
  words: readonly Word[],
  from: number,
  next: number,
  command: Command,
  objects: readonly (readonly string[])[],
): FoundCommand | null {
  const strangers = strangersBeside(words, from, next);
  const isShort = next - from === 1;
  if (command === 'note') {
    // "sixty-two, make a note cap missing": the note is what is said behind it.
    if (isShort && strangers.before > 0) return null;
    if (strangers.before > 3) return null;
    const text = trimmedText(words, next, ['that', 'of', 'saying', 'about', 'here', 'please', 'and', 'to', 'it', 'says', 'this']);
    if (isShort && words[from]?.word === 'note' && text === null && strangers.before > 0) return null;
    return { command, from, next, strangers: 0, text };
  }
  if (strangers.before > 1) return null;
  if (words[from]?.word === 'later' && (strangers.before > 0 || strangers.after > 0)) return null;
  if (words.slice(0, from).some(({ word }) => ASIDE_WORDS.has(word))) return null;
  let rest = next;
  if (isShort && words[from]?.word === 'skip' && words[next]?.word === 'the') {
    const object = objects.find((name) => name.every((word, index) => words[next + 1 + index]?.word === word));
    if (!object) return null;
    rest = next + 1 + object.length;
  }
  const text = trimmedText(words, rest, [
    'because',
    'cause',
    'since',
    'as',
    'it',
    'is',
    'the',
    'for',
    'now',
    'please',
    'and',
    'one',
    'check',
    'on',
    'this',
    'so',
    'thanks',
    'okay',
    'today',
    'reason',
    'being',
  ]);
  return { command, from, next: rest, strangers: 0, text };
}

/** The words behind, without what only leads over to them; null where nothing is left. */
function trimmedText(words: readonly Word[], from: number, leads: readonly string[]): { from: number; to: number } | null {
  let start = from;
  while (start < words.length && (words[start]?.kind === 'mark' || leads.includes(words[start]?.word ?? ''))) start += 1;
  let end = words.length;
  while (end > start && words[end - 1]?.kind === 'mark') end -= 1;
  if (start >= end) return null;
  // "skip it for now, it is frozen": the lead-over word may be needed to read well, the mark is not.
  return { from: start, to: end };
}
