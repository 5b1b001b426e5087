// Writes what is made from prisma/models.prisma: one typed client for each database engine; works offline. Plain JavaScript, since it runs before anything is generated.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { root, say } from './run.mjs';

const generated = `${root}api/database/generated`;
const stamp = `${generated}/stamp`;
const engines = ['sqlite', 'postgres'];

/** Hash of everything that the generated files depend on. */
function sourceHash() {
  const hash = createHash('sha256');
  const files = [
    'prisma/models.prisma',
    ...engines.map((engine) => `prisma/${engine}/engine.prisma`),
    'node_modules/prisma/package.json',
  ];
  for (const file of files) hash.update(readFileSync(root + file));
  return hash.digest('hex');
}

/** Prisma wants a native schema engine for every command and downloads one; generating never runs it, so any program's name will do. */
const offline = {
  ...process.env,
  PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
  PRISMA_HIDE_UPDATE_MESSAGE: '1',
  CHECKPOINT_DISABLE: '1',
};

/** Generates when stale (or when told to); true when it did. Throws with Prisma's own words when the models are wrong. */
export function generate({ force = false } = {}) {
  const hash = sourceHash();
  if (!force && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return false;
  say('Generating the database client …');
  for (const engine of engines) {
    copyFileSync(`${root}prisma/models.prisma`, `${root}prisma/${engine}/models.prisma`);
    const run = spawnSync(
      process.execPath,
      [`${root}node_modules/prisma/build/index.js`, 'generate', '--config', '.config/prisma.ts'],
      {
        cwd: root,
        env: { ...offline, DRUMKEEP_ENGINE: engine },
        encoding: 'utf8',
      },
    );
    if (run.status !== 0) throw new Error(`prisma generate failed for ${engine}:\n${run.stdout}${run.stderr}`);
  }
  writeFileSync(stamp, hash);
  return true;
}
