/**
 * Chromium over its debugging pipe with nothing switched on but what a measurement asks for. A browser driven by a testing library
 * watches every request and every exception, which costs the page seconds under a slowed processor that no user would ever spend.
 */
import { spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';
import { CHROMIUM_FLAGS, findChromium } from '../tools/chromium.ts';

export interface BarePage {
  readonly command: (method: string, params?: Readonly<Record<string, unknown>>) => Promise<Record<string, unknown>>;
  /** @returns the value of an expression in the page */
  readonly value: (expression: string) => Promise<unknown>;
  readonly close: () => Promise<void>;
}

interface Reply {
  readonly id?: number;
  readonly result?: Record<string, unknown>;
  readonly error?: { readonly message: string };
}

/** Opens an empty page in a browser with this profile. @throws Error when there is no Chromium or a command fails */
export async function openBarePage(profile: string): Promise<BarePage> {
  const executable = findChromium();
  if (executable === null) throw new Error('No Chromium on this computer');
  const browser = spawn(
    executable,
    [
      ...CHROMIUM_FLAGS,
      '--headless=new',
      '--remote-debugging-pipe',
      '--window-size=390,844',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] },
  );
  const gone = new Promise<void>((resolve) => browser.once('exit', () => resolve()));
  const to = browser.stdio[3] as Writable;
  const from = browser.stdio[4] as Readable;
  const waiting = new Map<number, (reply: Reply) => void>();
  let rest = '';
  let last = 0;
  from.on('data', (bytes: Buffer) => {
    const parts = (rest + bytes.toString('utf8')).split('\0');
    rest = parts.pop() ?? '';
    for (const part of parts) {
      const reply = JSON.parse(part) as Reply;
      if (reply.id !== undefined) waiting.get(reply.id)?.(reply);
    }
  });
  const send = (method: string, params: Readonly<Record<string, unknown>>, sessionId?: string) =>
    new Promise<Record<string, unknown>>((resolve, reject) => {
      last += 1;
      waiting.set(last, ({ result, error }) => {
        if (error) reject(new Error(`${method}: ${error.message}`));
        else resolve(result ?? {});
      });
      to.write(`${JSON.stringify({ id: last, method, params, ...(sessionId === undefined ? {} : { sessionId }) })}\0`);
    });
  const { targetInfos } = (await send('Target.getTargets', {})) as { targetInfos: { type: string; targetId: string }[] };
  const target = targetInfos.find(({ type }) => type === 'page');
  if (!target) throw new Error('The browser opened no page');
  const { sessionId } = (await send('Target.attachToTarget', { targetId: target.targetId, flatten: true })) as {
    sessionId: string;
  };
  const command: BarePage['command'] = (method, params = {}) => send(method, params, sessionId);
  return {
    command,
    value: async (expression) => {
      const { result } = (await command('Runtime.evaluate', { expression, returnByValue: true })) as {
        result: { value?: unknown };
      };
      return result.value;
    },
    close: async () => {
      await send('Browser.close', {}).catch(() => undefined);
      await gone;
    },
  };
}
