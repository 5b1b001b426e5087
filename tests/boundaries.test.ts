// The arrows of the system and the house style, file by file.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { describe, expect, it } from 'vitest';
import { arrows } from '../.config/boundaries.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Every source file of the project's own, by its path from the root. */
function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|mjs|js|svelte|css)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length).replaceAll('\\', '/'))
    .filter((file) => !file.startsWith('api/database/generated/'));
}

const files = ['api', 'admin', 'tests', 'fixtures', '.config'].flatMap(sources);
const textOf = (file: string) => readFileSync(join(root, file), 'utf8');

async function imports(): Promise<ICruiseResult> {
  const options = {
    baseDir: root,
    ruleSet: { forbidden: arrows },
    validate: true,
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^api/database/generated/.+/(internal|models)/' },
  };
  const { output } = await cruise(
    ['api', 'admin'],
    options,
    { extensions: ['.ts', '.svelte', '.js', '.json'] },
    { tsConfig: extractTSConfig(join(root, 'tsconfig.json')) },
  );
  if (typeof output === 'string') throw new Error('dependency-cruiser answered in words');
  return output;
}

describe('the arrows', () => {
  it('none of them turns', async () => {
    const { summary, modules } = await imports();
    expect(modules.filter(({ source }) => source.startsWith('api/science/')).length).toBeGreaterThan(10);
    expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([]);
  });

  it('science asks neither the clock nor the dice nor the world', () => {
    const world =
      /\b(Date\.now|new Date\(\)|performance\.|Math\.random|process\.|globalThis|fetch\(|setTimeout|console\.)/;
    const asking = files.filter(
      (file) => file.startsWith('api/science/') && world.test(textOf(file).replaceAll(/\/\/.*|\/\*[^]*?\*\//g, '')),
    );
    expect(asking).toEqual([]);
  });
});

describe('the house style', () => {
  const lengths = files.map((file) => ({ file, lines: textOf(file).trimEnd().split('\n').length }));
  const code = lengths
    .filter(({ file }) => /^(api|admin)\//.test(file))
    .map(({ lines }) => lines)
    .sort((a, b) => a - b);

  it('no file is longer than 350 lines', () => {
    expect(lengths.filter(({ lines }) => lines > 350)).toEqual([]);
  });

  it('half of the files of the product have at most 70 lines, nine in ten at most 200', () => {
    expect(code[Math.floor(code.length / 2)]).toBeLessThanOrEqual(70);
    expect(code[Math.floor(code.length * 0.9)]).toBeLessThanOrEqual(200);
  });

  it('every file says first what it is for', () => {
    const opening = /^(#!.*\n)?(\/\/|\/\*|<!--|<script[^>]*>\n\s*\/\/|<script module[^>]*>\n\s*\/\/) ?\S/;
    expect(files.filter((file) => !opening.test(textOf(file)))).toEqual([]);
  });

  it('no file is named for being useful to everybody', () => {
    expect(
      files.filter((file) => /(^|[/.-])(utils?|helpers?|common|managers?|misc|shared)([/.-]|$)/i.test(file)),
    ).toEqual([]);
  });

  it('nothing is left for later, and no test is left out', () => {
    const unfinished =
      /\b(TODO|FIXME|XXX)\b|@ts-(ignore|expect-error|nocheck)|\b(it|test|describe)\.(skip|only|todo)\b/;
    const self = 'tests/boundaries.test.ts';
    expect(files.filter((file) => file !== self && unfinished.test(textOf(file)))).toEqual([]);
  });
});

describe('what is installed', () => {
  const { packages } = JSON.parse(textOf('package-lock.json')) as { packages: Record<string, { resolved?: string }> };

  it('there is one copy of each SQLite, since two with one file open can damage it', () => {
    const copies = (name: string) => Object.keys(packages).filter((path) => path.endsWith(`node_modules/${name}`));
    expect(copies('better-sqlite3')).toEqual(['node_modules/better-sqlite3']);
    expect(copies('sqlite3')).toEqual(['node_modules/sqlite3']);
  });

  it('the lock file names no address to install from', () => {
    expect(Object.entries(packages).filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
  });

  it('Prisma’s parts are of one version, and its WebAssembly engine is the one it names itself', () => {
    const own = JSON.parse(textOf('package.json')) as { dependencies: Record<string, string> };
    const engines = JSON.parse(textOf('node_modules/@prisma/engines/package.json')) as {
      dependencies: Record<string, string>;
    };
    const names = [
      'prisma',
      '@prisma/client',
      '@prisma/adapter-better-sqlite3',
      '@prisma/adapter-pg',
      '@prisma/driver-adapter-utils',
    ];
    expect(new Set(names.map((name) => own.dependencies[name]))).toEqual(new Set(['7.10.0']));
    expect(own.dependencies['@prisma/schema-engine-wasm']).toBe(engines.dependencies['@prisma/engines-version']);
  });
});
