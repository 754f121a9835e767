/** The app's ears in Node: the same model, grammar, listener and decoder; only the microphone is a file. */
import { readFileSync } from 'node:fs';
import { type AcousticModel, readAcousticModel } from '../../src/speech/recogniser/acousticModel.ts';
import type { AnswerDecoder } from '../../src/speech/recogniser/layeredDecoder.ts';
import { appLexicon } from '../../src/speech/recogniser/lexicon.ts';
import { Listener, type ListenerEvent } from '../../src/speech/recogniser/listener.ts';
import { Networks } from '../../src/speech/recogniser/networks.ts';
import { Resampler } from '../../src/speech/recogniser/resampler.ts';
import type { Sound } from '../audio/wav.ts';

const MODEL = new URL('../../public/ears/model.bin', import.meta.url);

export interface NodeEars {
  readonly model: AcousticModel;
  readonly networks: Networks;
}

export async function openEars(): Promise<NodeEars> {
  const model = readAcousticModel(readFileSync(MODEL));
  return { model, networks: new Networks(model, appLexicon()) };
}

export type Utterance = Extract<ListenerEvent, { type: 'heard' | 'not-understood' }>;

export interface Heard {
  readonly utterances: readonly Utterance[];
  /** Names of problems with the sound itself. */
  readonly problems: readonly string[];
  readonly seconds: number;
  readonly cpuMs: number;
}

/** Play a sound to the listener as a microphone would, in pieces of 32 ms. */
export function hearSound(_ears: NodeEars, decoder: AnswerDecoder, { rate, samples }: Sound): Heard {
  const utterances: Utterance[] = [];
  const problems: string[] = [];
  const started = process.cpuUsage();
  const listener = new Listener({
    now: () => performance.now(),
    onEvent(event) {
      if (event.type === 'heard' || event.type === 'not-understood') utterances.push(event);
      else if (event.type === 'sound') problems.push(event.problem);
    },
  });
  listener.open({ kind: 'answer', decoder });
  const resampler = new Resampler(rate, 16_000);
  const piece = Math.round(rate * 0.032);
  for (let at = 0; at < samples.length; at += piece) listener.feed(resampler.process(samples.subarray(at, at + piece)));
  listener.feed(resampler.process(new Float32Array(Math.round(rate * 0.05))));
  listener.finish();
  const used = process.cpuUsage(started);
  return { utterances, problems, seconds: samples.length / rate, cpuMs: (used.user + used.system) / 1000 };
}
