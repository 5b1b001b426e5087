// The test runner: numbers and rules, the API on both database engines, journeys in a browser.
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The run on real room air needs data that is not part of the project; whoever has it names its folder. */
const real = process.env['DRUMKEEP_REAL_DATA'] !== undefined;

export default defineConfig({
  root,
  cacheDir: `${root}node_modules/.vitest`,
  // One copy of graphql, the one that Node gives to the libraries: it refuses types of another copy.
  resolve: { alias: [{ find: /^graphql$/, replacement: `${root}node_modules/graphql/index.js` }] },
  test: {
    include: real ? ['tests/real/**/*.test.ts'] : ['tests/**/*.test.ts'],
    exclude: real ? [] : ['tests/real/**'],
    environment: 'node',
    globalSetup: ['tests/support/databases.ts'],
    pool: 'forks',
    // Test files of one process share what they import: reading the API and its libraries anew for each was a fifth of the run.
    isolate: false,
    // The runner leaves one processor to others; here nobody else wants it.
    maxWorkers: availableParallelism(),
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // A loaded machine may be too slow for a browser once. Only being too slow is tried again, and said (ci.mjs).
    retry: { count: 1, condition: /Timeout \d+ms exceeded|timed out in \d+ms/ },
    allowOnly: false,
    passWithNoTests: false,
  },
});
