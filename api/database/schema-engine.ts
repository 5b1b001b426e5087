// Prisma's schema engine as WebAssembly: what the full command line runs natively, without its download.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import type { SchemaEngine, SchemaFilter } from '@prisma/schema-engine-wasm/schema_engine_bg';

/** Nothing in the database is managed by anybody else. */
export const everything: SchemaFilter = { externalTables: [], externalEnums: [] };

let instantiated: Promise<typeof import('@prisma/schema-engine-wasm/schema_engine_bg')> | undefined;

const isStart = (value: unknown): value is () => void => typeof value === 'function';

async function instantiate() {
  const engine = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  const file = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    .replace(/\.js$/, '.wasm');
  const { instance } = await WebAssembly.instantiate(await readFile(file), {
    './schema_engine_bg.js': engine as unknown as WebAssembly.ModuleImports,
  });
  engine.__wbg_set_wasm(instance.exports);
  const start = instance.exports['__wbindgen_start'];
  if (!isStart(start)) throw new Error('the schema engine has no start function');
  start();
  return engine;
}

/** The same factory, with a way to close all that it opened: the engine leaves its connections to chance. */
function closable(inner: SqlMigrationAwareDriverAdapterFactory) {
  const opened: SqlDriverAdapter[] = [];
  const remembered = async (connection: Promise<SqlDriverAdapter>) => {
    opened.push(await connection);
    return connection;
  };
  const factory: SqlMigrationAwareDriverAdapterFactory = {
    provider: inner.provider,
    adapterName: inner.adapterName,
    connect: () => remembered(inner.connect()),
    connectToShadowDb: () => remembered(inner.connectToShadowDb()),
  };
  return { factory, close: async () => void (await Promise.all(opened.map((connection) => connection.dispose()))) };
}

/** What the work answers, given a schema engine that speaks to the database behind the adapter. */
export async function withSchemaEngine<Answer>(
  adapter: SqlMigrationAwareDriverAdapterFactory,
  models: [path: string, content: string][],
  work: (engine: SchemaEngine) => Promise<Answer>,
): Promise<Answer> {
  instantiated ??= instantiate();
  const { SchemaEngine: Engine } = await instantiated;
  const { factory, close } = closable(adapter);
  try {
    const engine = await Engine.new(
      { datamodels: models },
      () => undefined,
      bindMigrationAwareSqlAdapterFactory(factory),
    );
    return await work(engine).finally(() => engine.free());
  } finally {
    await close();
  }
}
