import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    // The real editor has a configuration of its own: test/editor/vitest.config.mts.
    exclude: ['test/editor/**'],
    setupFiles: ['test/helpers/propertyRuns.ts'],
    // Modules keep no state of their own, so that each worker may load them once for all its test files.
    isolate: false,
    // One worker for each core; the main process, for which vitest keeps one free, has little to do.
    maxWorkers: '100%',
    // No measure of speed, only an end to a test that hangs: a busy machine may take ten times as long as a quiet one.
    testTimeout: 120_000,
    // For `npm run coverage`, which prints it by room.
    coverage: {
      provider: 'v8',
      include: ['schema/**/*.ts', 'server/*/**/*.ts', 'client/**/*.ts'],
      reporter: ['json-summary'],
      reportsDirectory: '.cache/coverage',
    },
  },
});
