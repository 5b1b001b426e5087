// The test runner: numbers and rules, the API on both database engines, journeys in a browser.
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The run on real room air needs data that is not part of the project; whoever has it names its folder. */
const real = process.env['DRUMKEEP_REAL_DATA'] !== undefined;

const all = ['tests/**/*.test.ts'];
const measured = ['tests/real/**'];

/** What looks at a room without the others, replaces a module, or ends processes: each file begins anew. */
const apart = [
  'tests/*.test.ts',
  'tests/{climate,commands,database}/**/*.test.ts',
  'tests/exposure/{passes,rebuild}.test.ts',
];

/** What every test file is run with. A project takes nothing from the whole but what is made once for all. */
const each = {
  root,
  cacheDir: `${root}node_modules/.vitest`,
  // One copy of graphql, the one that Node gives to the libraries: it refuses types of another copy.
  resolve: { alias: [{ find: /^graphql$/, replacement: `${root}node_modules/graphql/index.js` }] },
};
const test = {
  environment: 'node',
  pool: 'forks',
  testTimeout: 60_000,
  hookTimeout: 120_000,
  // What is waited for may take a loaded machine longer than a second; what comes is seen at once.
  expect: { poll: { timeout: 20_000 } },
  // A loaded machine may be too slow for a browser once. Only being too slow is tried again, and said (ci.mjs).
  retry: { count: 1, condition: /Timeout \d+ms exceeded|timed out in \d+ms/ },
} as const;

export default defineConfig({
  ...each,
  test: {
    projects: real
      ? [{ ...each, test: { ...test, name: 'real air', include: ['tests/real/**/*.test.ts'] } }]
      : [
          // Files of one process share what they import: reading the API and its libraries anew for each was a fifth of the run.
          {
            ...each,
            test: { ...test, name: 'together', include: all, exclude: [...apart, ...measured], isolate: false },
          },
          { ...each, test: { ...test, name: 'apart', include: apart, exclude: measured } },
        ],
    globalSetup: ['tests/support/databases.ts'],
    // The runner leaves one processor to others; here nobody else wants it.
    maxWorkers: availableParallelism(),
    allowOnly: false,
    passWithNoTests: false,
  },
});
