/**
 * How each command may be said to these ears. Kept to phrases that are hard to mistake for an answer: a short word that sounds
 * like a number or a state would cost more than it gives. Left out for that, as nine synthetic voices showed: "note" was heard for
 * "none", "out" and "cracked", "pause" for "hot". Tests hold every one against the interpreter.
 */
import type { Command } from '../../domain/language/meaning.ts';

/** Wishes that are no commands of the interpreter: a picture, and the style of asking. */
export const WISH_PHRASES: readonly string[] = ['take a picture', 'take a photo', 'short questions', 'full questions'];

export const COMMAND_PHRASES: Readonly<Record<Command, readonly string[]>> = {
  repeat: ['repeat', 'say again', 'say that again', 'repeat that', 'come again'],
  back: ['back', 'go back'],
  skip: ['skip', 'skip it', 'skip this', 'skip that'],
  wait: ['wait', 'hold on', 'hang on', 'one moment'],
  resume: ['resume', 'go on', 'continue', "i'm back"],
  undo: ['undo', 'undo that', 'scratch that', 'take that back'],
  where: ['where are we', 'where am i'],
  note: ['make a note', 'take a note', 'add a note'],
  louder: ['louder', 'speak up'],
  quieter: ['quieter', 'not so loud'],
  stop: ['stop', 'stop listening'],
  help: ['help', 'what can i say'],
  why: ['why'],
  next: ['next', 'next one'],
};
