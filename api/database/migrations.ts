// The migrations and models that this version carries, as files beside the code.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Engine } from './client.ts';

const prismaFolder = fileURLToPath(new URL('../../prisma/', import.meta.url));
const folderOf = (engine: Engine) => `${prismaFolder}migrations/${engine}`;

/** Names of this version's migrations, oldest first. */
export function knownMigrations(engine: Engine): string[] {
  if (!existsSync(folderOf(engine))) return [];
  return readdirSync(folderOf(engine), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/** The SQL of one of them. */
export function migrationText(engine: Engine, name: string): string {
  return readFileSync(`${folderOf(engine)}/${name}/migration.sql`, 'utf8');
}

/** All of them as Prisma's schema engine takes them. */
export function migrationList(engine: Engine) {
  return {
    baseDir: folderOf(engine),
    lockfile: { path: 'migration_lock.toml', content: readFileSync(`${folderOf(engine)}/migration_lock.toml`, 'utf8') },
    shadowDbInitScript: '',
    migrationDirectories: knownMigrations(engine).map((name) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok' as const, value: migrationText(engine, name) } },
    })),
  };
}

/** The datasource and the models of an engine, as its files. */
export function schemaFiles(engine: Engine): [path: string, content: string][] {
  return [`${engine}/engine.prisma`, 'models.prisma'].map((path) => [path, readFileSync(prismaFolder + path, 'utf8')]);
}
