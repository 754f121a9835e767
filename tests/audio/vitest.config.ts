import { defineConfig } from 'vitest/config';

/** Tests on real speech. One file at a time: the decoder fills a core. */
export default defineConfig({
  test: {
    root: '.',
    include: ['tests/audio/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 900_000,
  },
});
