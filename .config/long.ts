// `npm run long`: everything in full where the usual run takes a sample, then the usual run on later Nodes.
// `npm run long -- tests/climate` gives only those tests, on this Node.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const laterNodes = ['22', '24'];
/** What a checkout consists of; all else is made from it. */
const checkout = [
  '.ci',
  '.config',
  '.npmrc',
  'admin',
  'api',
  'fixtures',
  'package.json',
  'package-lock.json',
  'prisma',
  'tests',
  'tsconfig.json',
  'README.md',
  'DEVELOPERS.md',
];

function run(program: string, args: string[], cwd: string, env: NodeJS.ProcessEnv): number {
  return (
    spawnSync(program, args, {
      cwd,
      env,
      stdio: ['ignore', 'inherit', 'inherit'],
      shell: process.platform === 'win32' && program === 'npm',
    }).status ?? 1
  );
}

/** A copy of the checkout with its own packages, tested by the Node that the npm package `node` brings. */
function onLaterNode(version: string): number {
  const folder = join(root, '.data/long', `node-${version}`);
  rmSync(folder, { recursive: true, force: true });
  const [bin, copy] = [join(folder, 'bin'), join(folder, 'drumkeep')];
  mkdirSync(bin, { recursive: true });
  if (
    run(
      'npm',
      ['install', '--prefix', bin, '--no-audit', '--no-fund', '--no-save', `node@${version}`],
      root,
      process.env,
    ) !== 0
  )
    return 1;
  for (const part of checkout) cpSync(join(root, part), join(copy, part), { recursive: true });
  const node = join(bin, 'node_modules/node/bin', process.platform === 'win32' ? 'node.exe' : 'node');
  const path = `${join(bin, 'node_modules/node/bin')}${process.platform === 'win32' ? ';' : ':'}${process.env['PATH'] ?? ''}`;
  return run(node, [join(copy, '.config/ready.mjs'), 'test'], copy, { ...process.env, PATH: path, INIT_CWD: copy });
}

const only = process.argv.slice(2);
const here = run(process.execPath, [join(root, '.config/ready.mjs'), 'test', ...only], root, {
  ...process.env,
  DRUMKEEP_LONG: 'yes',
});
const failed = here === 0 ? [] : [`Node ${process.versions.node}`];
if (only.length === 0) for (const version of laterNodes) if (onLaterNode(version) !== 0) failed.push(`Node ${version}`);
console.log(failed.length === 0 ? 'All of it holds.' : `Failed on ${failed.join(', ')}.`);
process.exitCode = failed.length === 0 ? 0 : 2;
