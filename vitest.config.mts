import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    // The real editor has a configuration of its own: test/editor/vitest.config.mts.
    exclude: ['test/editor/**'],
  },
});
