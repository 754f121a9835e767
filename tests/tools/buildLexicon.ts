/**
 * Writes `src/speech/recogniser/lexiconEntries.ts`: `npx tsx tests/tools/buildLexicon.ts`.
 *
 * Every word that a grammar of the catalogue can contain, and a broad everyday and trade vocabulary for phrases to come, with
 * the pronunciations of the CMU Pronouncing Dictionary (free for any use) and reviewed alternates.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { dictionary } from 'cmu-pronouncing-dictionary';
import { compileGrammar, vocabularyOf } from '../../src/speech/recogniser/automaton.ts';
import { wordsOf } from '../../src/speech/recogniser/grammar.ts';
import { requestRule } from '../../src/speech/recogniser/requestGrammar.ts';
import { catalogueRequests, namedRequest } from './catalogueRequests.ts';
import { REVIEWED } from './reviewedPronunciations.ts';

const TARGET = 'src/speech/recogniser/lexiconEntries.ts';

/** Reviewed ways first, then the dictionary's, without stress; null for an unknown word. */
function pronounce(word: string): readonly string[] | null {
  const ways = [...(REVIEWED[word] ?? [])];
  if (ways.length === 0) {
    for (let index = 1; ; index += 1) {
      const entry = dictionary[index === 1 ? word : `${word}(${index})`];
      if (entry === undefined) break;
      ways.push(entry.replace(/#.*/, '').trim().replace(/\d/g, ''));
    }
  }
  return ways.length > 0 ? [...new Set(ways)] : null;
}

/** The generated file's text, and the words that nobody could pronounce. */
export function buildLexicon(): { readonly text: string; readonly missing: readonly string[] } {
  const words = new Set(wordsOf(readFileSync(new URL('everydayWords.txt', import.meta.url), 'utf8')));
  for (const word of Object.keys(REVIEWED)) words.add(word);
  const requests = catalogueRequests();
  const grammars = [
    ...requests.map(({ request }) => request),
    { ...namedRequest(requests), others: namedRequest(requests).others.slice(0, 0) },
  ];
  for (const request of grammars) for (const word of vocabularyOf(compileGrammar(requestRule(request)))) words.add(word);
  for (const { names } of requests) for (const word of names.flatMap(wordsOf)) words.add(word);
  const lines: string[] = [];
  const missing: string[] = [];
  for (const word of [...words].sort()) {
    const ways = pronounce(word);
    if (ways) lines.push(`${word} ${ways.join('|')}`);
    else missing.push(word);
  }
  const text = `/** Written by tests/tools/buildLexicon.ts; pronunciations from the CMU Pronouncing Dictionary and reviewed alternates. */\nexport const LEXICON_TEXT = \`\n${lines.join('\n')}\n\`;\n`;
  return { text, missing };
}

if (process.argv[1]?.endsWith('buildLexicon.ts')) {
  const { text, missing } = buildLexicon();
  if (missing.length > 0) {
    console.error(`No pronunciation for: ${missing.join(', ')}. Add them to tests/tools/reviewedPronunciations.ts.`);
    process.exitCode = 1;
  }
  writeFileSync(TARGET, text);
  console.log(`${TARGET}: ${text.split('\n').length - 3} words`);
}
