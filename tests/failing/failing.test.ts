// What the runner answers when a test fails: libraries that it loads may have a say in how a process ends.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

it('a run with a failed test ends with an error, also when it started the database server', async () => {
  const run = spawn(
    process.execPath,
    ['node_modules/vitest/vitest.mjs', 'run', '-c', 'tests/failing/config.ts', '--reporter=json'],
    { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let told = '';
  run.stdout.setEncoding('utf8').on('data', (part: string) => (told += part));
  const code = await new Promise((ended) => run.on('close', ended));
  expect(JSON.parse(told.slice(told.indexOf('{')))).toMatchObject({ numFailedTests: 1, numTotalTests: 1 });
  expect(told).toContain('postgres://');
  expect(code).toBe(1);
});
