// Builds the admin into .data/admin when its sources have changed since the last time.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { mustRun, root, say } from './run.mjs';

const stamp = `${root}.data/admin.stamp`;
const page = `${root}.data/admin/index.html`;

function sourceHash() {
  const hash = createHash('sha256');
  const sources = readdirSync(`${root}admin`, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`)
    .sort();
  for (const file of [...sources, `${root}.config/vite.ts`, `${root}.config/worker.ts`, `${root}package-lock.json`])
    hash.update(file.slice(root.length)).update(readFileSync(file));
  return hash.digest('hex');
}

/** Builds when stale, or when told to. */
export function buildAdmin({ force = false } = {}) {
  const hash = sourceHash();
  if (!force && existsSync(page) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  say('Building the admin …');
  mustRun('Building the admin', [
    'node_modules/vite/bin/vite.js',
    'build',
    '-c',
    '.config/vite.ts',
    '--logLevel',
    'warn',
  ]);
  mkdirSync(`${root}.data`, { recursive: true });
  writeFileSync(stamp, hash);
}
