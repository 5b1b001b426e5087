// Installs what package-lock.json names and node_modules lacks.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { root, say } from './run.mjs';

const stamp = `${root}node_modules/.drumkeep`;

/** Native packages are compiled for one generation of Node. */
const abi = process.versions.modules;

function wantedHash() {
  const hash = createHash('sha256');
  for (const file of ['package.json', 'package-lock.json']) hash.update(readFileSync(root + file));
  return hash.digest('hex');
}

function installed() {
  if (!existsSync(stamp)) return undefined;
  try {
    return JSON.parse(readFileSync(stamp, 'utf8'));
  } catch {
    return undefined;
  }
}

function npm(args) {
  // npm tells its scripts where it is; started without npm, the one on the path has to do (on Windows a batch file).
  const program = process.env.npm_execpath;
  const byNode = program !== undefined && /\.[cm]?js$/.test(program);
  const { status, error } = spawnSync(byNode ? process.execPath : 'npm', [...(byNode ? [program] : []), ...args], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: !byNode && process.platform === 'win32',
    // Prisma would download an engine that Drumkeep does not use; the name of any program keeps it from that.
    env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_SKIP_POSTINSTALL_GENERATE: '1' },
  });
  if (status !== 0) throw new Error(`npm ${args[0]} failed${error ? `: ${error.message}` : ''}`);
}

/** `start`: what running needs. `all`: also what tests and checks need; it serves for `start` too, and is kept then. */
export function install(needs) {
  const before = installed();
  const hash = wantedHash();
  const fits = before?.hash === hash && (before.needs === 'all' || before.needs === needs);
  if (fits && before.abi === abi) return;
  if (fits) {
    say('Another Node than last time: compiling two packages again …');
    npm(['rebuild', 'better-sqlite3', 'sqlite3', '--loglevel=error']);
  } else {
    const all = needs === 'all' || before?.needs === 'all' || existsSync(`${root}node_modules/vitest`);
    if (all) needs = 'all';
    say(
      before
        ? 'Installing what has changed …'
        : 'Installing what is missing; the first time two packages are compiled, which takes a few minutes …',
    );
    npm(['install', '--no-audit', '--no-fund', '--loglevel=error', ...(all ? [] : ['--omit=dev'])]);
  }
  mkdirSync(`${root}node_modules`, { recursive: true });
  writeFileSync(stamp, JSON.stringify({ hash: wantedHash(), needs, abi }));
}
