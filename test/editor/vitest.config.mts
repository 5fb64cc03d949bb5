import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/editor/**/*.test.ts'],
    fileParallelism: false,
    // Each attempt starts from a fresh profile; one that fails leaves its screenshot and log in test/editor/shots.
    retry: 1,
    testTimeout: 480_000,
    globalSetup: ['test/editor/prepareEditor.ts'],
  },
});
