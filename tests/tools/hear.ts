/**
 * `npm run -s hear -- --check <id> [--position <p>] file.wav …` or `--grammar file.jsgf file.wav …`: the app's own decoder on
 * recordings. Prints one JSON line for each file. `--abnf` and `--jsgf` print the grammar instead.
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { POSITIONS, type Position } from '../../src/domain/checks/expects.ts';
import { interpret } from '../../src/domain/language/interpret.ts';
import type { InterpretContext } from '../../src/domain/language/meaning.ts';
import { TRUST } from '../../src/domain/language/trust.ts';
import type { ListenRequest } from '../../src/domain/voice/ports.ts';
import { compileGrammar } from '../../src/speech/recogniser/automaton.ts';
import type { Rule } from '../../src/speech/recogniser/grammar.ts';
import { parseJsgf, toAbnf, toJsgf } from '../../src/speech/recogniser/jsgf.ts';
import { requestRule } from '../../src/speech/recogniser/requestGrammar.ts';
import { readWav } from '../audio/wav.ts';
import { catalogueRequests } from './catalogueRequests.ts';
import { hearSound, openEars } from './nodeEars.ts';

/** From this confidence on a hearing counts as accepted; the app's policy asks again, or to confirm, below it. */
const ACCEPTED = TRUST['built-in'].accept;

interface Arguments {
  readonly check: string | null;
  readonly grammar: string | null;
  readonly position: Position | null;
  readonly print: 'abnf' | 'jsgf' | null;
  readonly files: readonly string[];
}

function usage(problem: string): never {
  console.error(
    `${problem}\nusage: hear --check <id> [--position <p>] file.wav …\n       hear --grammar file.jsgf file.wav …\n       hear --check <id> --abnf|--jsgf`,
  );
  process.exit(2);
}

function parseArguments(given: readonly string[]): Arguments {
  let [check, grammar, position, print]: [string | null, string | null, Position | null, 'abnf' | 'jsgf' | null] = [
    null,
    null,
    null,
    null,
  ];
  const files: string[] = [];
  for (let index = 0; index < given.length; index += 1) {
    const one = given[index] ?? '';
    const value = () => {
      index += 1;
      return given[index] ?? usage(`${one} needs a value`);
    };
    if (one === '--check') check = value();
    else if (one === '--grammar') grammar = value();
    else if (one === '--position') {
      const name = value();
      position = POSITIONS.find((known) => known === name) ?? usage(`no position ${name}; one of ${POSITIONS.join(', ')}`);
    } else if (one === '--abnf' || one === '--jsgf') print = one === '--abnf' ? 'abnf' : 'jsgf';
    else if (one.startsWith('--')) usage(`unknown option ${one}`);
    else files.push(one);
  }
  if ((check === null) === (grammar === null)) usage('give either --check or --grammar');
  if (files.length === 0 && print === null) usage('no file');
  return { check, grammar, position, print, files };
}

function requestFor(check: string, position: Position | null): { request: ListenRequest; context: InterpretContext } {
  const found = catalogueRequests().find((one) => one.check === check);
  if (!found) return usage(`no check ${check}; one of ${[...new Set(catalogueRequests().map((one) => one.check))].join(', ')}`);
  const request = { ...found.request, position: position ?? found.request.position };
  const context: InterpretContext = {
    expects: request.expects,
    names: found.names,
    position: request.position,
    positions: request.positions,
    others: [],
    last: null,
    previous: null,
    mode: 'answer',
  };
  return { request, context };
}

async function main(): Promise<void> {
  const { check, grammar, position, print, files } = parseArguments(process.argv.slice(2));
  const asked = check === null ? null : requestFor(check, position);
  let rule: Rule;
  try {
    rule = asked ? requestRule(asked.request) : parseJsgf(readFileSync(grammar ?? '', 'utf8'));
  } catch (error) {
    return usage(error instanceof Error ? error.message : String(error));
  }
  if (print) {
    const automaton = compileGrammar(rule);
    console.log(print === 'abnf' ? toAbnf(automaton) : toJsgf(automaton, 'answers'));
    return;
  }
  const ears = await openEars();
  const decoder = ears.networks.compile(rule);
  let failed = false;
  for (const file of files) {
    try {
      const { utterances, problems, seconds, cpuMs } = hearSound(ears, decoder, readWav(file));
      const best = utterances.find((one) => one.type === 'heard') ?? utterances[0];
      const hypotheses = best?.decoded?.hypotheses ?? [];
      const top = hypotheses[0];
      console.log(
        JSON.stringify({
          file: basename(file),
          words: top?.words.join(' ') ?? '',
          meaning: asked && top ? interpret(top.words.join(' '), asked.context) : null,
          nBest: hypotheses.map(({ words, confidence, score }) => ({
            words: words.join(' '),
            confidence: Number(confidence.toFixed(3)),
            score: Number(score.toFixed(1)),
          })),
          confidence: top ? Number(top.confidence.toFixed(3)) : null,
          accepted: best?.type === 'heard' && (top?.confidence ?? 0) >= ACCEPTED,
          utterances: utterances.length,
          sound: problems,
          evidence: best?.decoded?.evidence ?? null,
          timing: {
            soundS: Number(seconds.toFixed(2)),
            realTimeFactor: Number((cpuMs / 1000 / seconds).toFixed(3)),
            ...(best?.timing ?? {}),
          },
        }),
      );
    } catch (error) {
      failed = true;
      console.log(JSON.stringify({ file: basename(file), error: error instanceof Error ? error.message : String(error) }));
    }
  }
  if (failed) process.exitCode = 1;
}

await main();
