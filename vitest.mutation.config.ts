import { defineConfig, mergeConfig } from 'vitest/config';
import base from './vitest.config.ts';

// Only the tests beside the code that is mutated: those that start the built command line never see a mutant.
export default mergeConfig(
  { ...base, test: { ...base.test, include: [] } },
  defineConfig({
    test: {
      include: ['src/{kernel,contract,engine}/**/tests/**/*.test.ts', 'src/disciplines/motion/**/tests/**/*.test.ts'],
    },
  }),
);
