// A run of one test that fails, with the same databases as the usual run.
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: { include: ['tests/failing/fails.ts'], globalSetup: ['tests/support/databases.ts'] },
});
