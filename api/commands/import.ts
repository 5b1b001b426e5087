/** `npm run import -- FILE --room NAME`: a logger's file into a room's air; with --dry-run only what would be understood. */
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Answers, LoggerFile } from '../climate/logger/file.ts';
import { loggerJson } from '../climate/logger/json.ts';
import { isLoggerFile, readLogger } from '../climate/logger/read.ts';
import { readSettings } from '../settings.ts';
import { BadInput } from '../bad-input.ts';
import { endWith } from './ending.ts';
import { askedOf } from './import/options.ts';
import { understoodText } from './import/shown.ts';

async function run(words: readonly string[]): Promise<number> {
  const { file, room, json, answers } = askedOf(words);
  const settings = readSettings(process.env);
  const bytes = await bytesOf(file);
  if (room !== null) {
    // The database and all that hangs on it are loaded only to write.
    const { imported } = await import('./import/write.ts');
    console.log(await imported(settings, { bytes, fileName: basename(file), room, answers }));
    return 0;
  }
  const read = await readOrRefuse(bytes, file, { ...answers, labZone: settings.timeZone });
  console.log(json ? JSON.stringify(loggerJson(read), null, 2) : understoodText(read));
  return 0;
}

async function bytesOf(file: string): Promise<Uint8Array> {
  try {
    return await readFile(file);
  } catch (error) {
    const reason =
      error instanceof Error && 'code' in error && error.code === 'EISDIR'
        ? 'a folder, expected a file'
        : 'expected a file that can be read';
    throw new BadInput(`unknown FILE: ${file}, ${reason}`);
  }
}

async function readOrRefuse(bytes: Uint8Array, file: string, answers: Answers): Promise<LoggerFile> {
  const read = await readLogger(bytes, basename(file), answers);
  if (isLoggerFile(read)) return read;
  throw new BadInput(`invalid FILE: ${file}, it is ${read.is}; expected ${read.expected}`);
}

await endWith(run(process.argv.slice(2)));
