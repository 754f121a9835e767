/** Serves the production build on a free port for the whole run. */
import type { AddressInfo } from 'node:net';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    readonly origin: string;
  }
}

export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const server = await preview({ preview: { port: 0, host: '127.0.0.1', open: false }, logLevel: 'error' });
  const { port } = server.httpServer.address() as AddressInfo;
  project.provide('origin', `http://127.0.0.1:${port}`);
  return () => new Promise((resolve) => server.httpServer.close(() => resolve()));
}
