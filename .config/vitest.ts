// The test runner: numbers and rules, the API on both database engines, journeys in a browser.
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  cacheDir: `${root}node_modules/.vitest`,
  test: {
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    globalSetup: ['tests/support/postgres.ts'],
    pool: 'forks',
    testTimeout: 30_000,
    hookTimeout: 120_000,
    allowOnly: false,
    passWithNoTests: false,
  },
});
