import { defineConfig } from 'vitest/config';

/** Browser tests over the production build in `dist`: one browser at a time, so that timings mean something. */
export default defineConfig({
  test: {
    root: '.',
    include: ['tests/e2e/**/*.test.ts'],
    globalSetup: ['tests/e2e/support/serve.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
  },
});
