// Prisma's schema engine as WebAssembly: what the full command line runs natively, without its download.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import type { MigrationList, SchemaEngine, SchemaFilter } from '@prisma/schema-engine-wasm/schema_engine_bg';

/** Nothing in the database is managed by anybody else. */
export const everything: SchemaFilter = { externalTables: [], externalEnums: [] };

let instantiated: Promise<typeof import('@prisma/schema-engine-wasm/schema_engine_bg')> | undefined;

async function instantiate() {
  const engine = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  const file = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg').replace(/\.js$/, '.wasm');
  const { instance } = await WebAssembly.instantiate(await readFile(file), {
    './schema_engine_bg.js': engine as unknown as WebAssembly.ModuleImports,
  });
  engine.__wbg_set_wasm(instance.exports);
  const start = instance.exports['__wbindgen_start'];
  if (typeof start !== 'function') throw new Error('the schema engine has no start function');
  start();
  return engine;
}

/** A schema engine speaking to the database behind the adapter; `free()` it afterwards. */
export async function schemaEngine(
  adapter: SqlMigrationAwareDriverAdapterFactory,
  models: [path: string, content: string][],
): Promise<SchemaEngine> {
  instantiated ??= instantiate();
  const { SchemaEngine: Engine } = await instantiated;
  return Engine.new({ datamodels: models }, () => undefined, bindMigrationAwareSqlAdapterFactory(adapter));
}

export type { MigrationList };
