import { defineConfig } from 'vitest/config';
import manifest from './package.json' with { type: 'json' };

const long = process.env['GANTRYBOOK_LONG'] === '1';

export default defineConfig({
  define: { __GANTRYBOOK_VERSION__: JSON.stringify(manifest.version) },
  test: {
    environment: 'node',
    include: long ? ['{src,tests}/**/*.long.test.ts'] : ['src/**/tests/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: long ? [] : ['**/*.long.test.ts'],
    // Two slow cores under load must not turn a right answer into a failure.
    testTimeout: long ? 3_600_000 : 180_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    restoreMocks: true,
    // A golden file is written on purpose by its author, never by a run in CI.
    update: false,
  },
});
