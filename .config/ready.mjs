// `node .config/ready.mjs MODE`: makes ready what a script needs, then runs it. Plain JavaScript: it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const [mode, ...rest] = process.argv.slice(2);
const { generate } = await import('./generate.mjs');
generate({ force: mode === 'models' });
const script = { models: '.config/migration.ts', start: 'api/server.ts' }[mode] ?? `api/commands/${mode}.ts`;
process.exit(spawnSync(process.execPath, ['--import', 'tsx', script, ...rest], { cwd: root, stdio: 'inherit' }).status ?? 1);
