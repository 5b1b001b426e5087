// `node .config/ready.mjs MODE [ARGUMENTS]`: makes ready what a script of package.json needs, then runs it.
// Plain JavaScript without packages, since it runs before anything is installed. What it says goes to standard error.
import { buildAdmin } from './admin.mjs';
import { style, types } from './checks.mjs';
import { generate } from './generate.mjs';
import { install } from './install.mjs';
import { runNode, runTypeScript, say } from './run.mjs';

const [mode = '', ...rest] = process.argv.slice(2);

/** Runs one after the other and stops at the first that fails. */
async function each(...steps) {
  for (const step of steps) {
    const code = await step();
    if (code !== 0) return code;
  }
  return 0;
}

/** All checks of a list, also after one that failed. */
async function all(checks) {
  let worst = 0;
  for (const args of Object.values(checks)) worst = Math.max(worst, await runNode(args));
  return worst;
}

const command = (name) => ({
  needs: 'start',
  run: () => runTypeScript(`api/commands/${name}.ts`, rest, { from: 'caller' }),
});

/** What each mode needs installed ('start': without what only tests and checks need), and what it does then. */
const modes = {
  start: { needs: 'start', admin: true, run: () => runTypeScript('api/server.ts', rest) },
  estimate: command('estimate'),
  tray: command('tray'),
  'plan-ovens': command('plan-ovens'),
  'plan-orders': command('plan-orders'),
  demand: command('demand'),
  import: command('import'),
  backup: command('backup'),
  verify: command('verify'),
  test: {
    needs: 'all',
    admin: true,
    run: () =>
      each(
        () => runTypeScript('.config/chromium.ts', []),
        () => runNode(['node_modules/vitest/vitest.mjs', 'run', '-c', '.config/vitest.ts', ...rest]),
      ),
  },
  build: { needs: 'start', admin: 'always', run: () => 0 },
  check: { needs: 'all', run: () => all(types) },
  lint: { needs: 'all', run: () => all(style) },
  models: { needs: 'all', generate: 'always', run: () => runTypeScript('.config/migration.ts', rest) },
  bench: { needs: 'all', admin: true, run: () => runTypeScript('tests/bench/run.ts', rest) },
  pictures: { needs: 'all', admin: true, run: () => runTypeScript('tests/pictures/take.ts', rest) },
  long: { needs: 'all', admin: true, run: () => runTypeScript('.config/long.ts', rest) },
};

const wanted = Object.hasOwn(modes, mode) ? modes[mode] : undefined;
if (wanted === undefined) {
  say(`unknown mode: ${mode}, one of ${Object.keys(modes).join(', ')}`);
  process.exit(1);
}
try {
  install(wanted.needs);
  generate({ force: wanted.generate === 'always' });
  if (wanted.admin) buildAdmin({ force: wanted.admin === 'always' });
  process.exitCode = await wanted.run();
} catch (error) {
  say(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
