import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../../src/domain/checks/catalogue.ts';
import { phrasesFor } from '../../../src/domain/language/grammarPhrases.ts';
import { interpret } from '../../../src/domain/language/interpret.ts';
import type { Command } from '../../../src/domain/language/meaning.ts';
import { spokenForms } from '../../../src/domain/language/spokenForms.ts';
import { asksForPicture } from '../../../src/domain/round/picture.ts';
import { styleAsked } from '../../../src/domain/round/styleAsked.ts';
import { COMMAND_PHRASES, WISH_PHRASES } from '../../../src/speech/recogniser/commandPhrases.ts';
import { contextOf, expectsOf, placesOf } from './corpus.ts';

const phrases = (Object.entries(COMMAND_PHRASES) as [Command, readonly string[]][]).flatMap(([command, list]) =>
  list.map((phrase) => [phrase, command] as const),
);

describe('commands that the built-in ears can hear', () => {
  it.each(phrases)('"%s" is %s, whatever is asked', (phrase, command) => {
    for (const { id } of CATALOGUE) {
      expect(interpret(phrase, contextOf({ check: id })), id).toMatchObject({ intent: 'command', command });
    }
  });
});

describe('commands beside other words', () => {
  const pressure = contextOf({ check: 'tire-pressure' });
  const coupler = contextOf({ check: 'coupler' });

  it.each([
    ['hold on a second', 'wait'],
    ['uh hang on, truck is coming', 'wait'],
    ['okay go ahead', 'resume'],
    ['can you repeat that please', 'repeat'],
    ['where was I', 'where'],
    ['why do I have to do that', 'why'],
  ] as const)('%s', (text, command) => {
    expect(interpret(text, pressure)).toMatchObject({ intent: 'command', command });
    expect(interpret(text, coupler)).toMatchObject({ intent: 'command', command });
  });

  it.each([["don't stop", "I can't wait", 'the bus stop is over there', 'that was a long wait for nothing good']])(
    'are none in talk about something else',
    (...texts) => {
      for (const text of texts) expect(interpret(text, coupler).intent, text).not.toBe('command');
    },
  );

  it('carry what belongs to them, as it was said', () => {
    expect(interpret('Make a note: Frayed near the drum.', coupler)).toMatchObject({
      command: 'note',
      text: 'Frayed near the drum',
    });
    expect(interpret("skip it, it's frozen shut", coupler)).toMatchObject({ command: 'skip', text: 'frozen shut' });
    expect(interpret('skip it', coupler)).toMatchObject({ command: 'skip', text: null });
    expect(interpret('skip the coupler', coupler)).toMatchObject({ command: 'skip' });
  });

  it('leave every word of a note to the note', () => {
    const free = { ...coupler, mode: 'free' as const };
    expect(interpret('no, sixty-two is loose, hold on to it', free)).toMatchObject({
      intent: 'command',
      command: 'note',
      text: 'no, sixty-two is loose, hold on to it',
    });
    expect(interpret('stop', free)).toMatchObject({ command: 'stop' });
    expect(interpret('', free)).toMatchObject({ intent: 'unclear' });
  });
});

describe('phrases that bias a recogniser', () => {
  it.each(CATALOGUE.map((definition) => [definition.id, definition] as const))(
    '%s: a few dozen, each understood',
    (_, definition) => {
      const positions = placesOf(definition);
      const expects = expectsOf(definition, positions[0] ?? null);
      const request = { expects, position: positions[0] ?? null, positions, others: [], mode: 'answer' as const };
      const list = phrasesFor(request);
      expect(new Set(list).size).toBe(list.length);
      expect(list.length).toBeGreaterThan(10);
      expect(list.length).toBeLessThanOrEqual(60);
      expect(phrasesFor({ ...request, mode: 'free' })).toEqual([]);
      if (expects.kind === 'state' || expects.kind === 'choice') {
        const context = contextOf({ check: definition.id });
        const labels =
          expects.kind === 'state' ? [...expects.ok, ...expects.problem] : expects.options.flatMap((option) => option.phrases);
        for (const phrase of labels) {
          const meaning = interpret(phrase, context);
          expect(meaning.intent, `${phrase}: ${JSON.stringify(meaning)}`).toBe('verdict');
          if (meaning.intent !== 'verdict') continue;
          if (expects.kind === 'state') expect(meaning.verdict, phrase).toBe(expects.ok.includes(phrase) ? 'ok' : 'problem');
          else expect(expects.options.find(({ id }) => id === meaning.option)?.phrases, phrase).toContain(phrase);
        }
      }
      if (expects.kind === 'reading') expect(spokenForms(expects.usual.min, expects).length).toBeGreaterThan(0);
    },
  );
});

describe('wishes that our ears listen for', () => {
  it.each(WISH_PHRASES)('"%s" is a picture or a style', (text) => {
    expect(asksForPicture(text) || styleAsked(text) !== null).toBe(true);
  });

  it('are not heard in talk', () => {
    for (const text of ['he keeps it short', 'the picture on the wall', 'no questions', 'sixty two']) {
      expect(asksForPicture(text) || styleAsked(text) !== null).toBe(false);
    }
  });
});
