import { defineConfig } from 'vitest/config';
import { CountReporter } from './count-reporter.ts';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['test/**/*.test.ts'],
    testTimeout: 600_000,
    hookTimeout: 600_000,
    reporters: ['default', new CountReporter()],
    maxWorkers: 2,
  },
});
