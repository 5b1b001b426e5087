// The one JSON file that a command is given.
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { BadInput } from '../bad-input.ts';

/** What the file holds, not yet checked, and where it lies; `what` says what it should be ("a scenario"). */
export async function jsonFile(words: readonly string[], what: string): Promise<{ path: string; raw: unknown }> {
  const [file, ...more] = words;
  if (file === undefined) throw new BadInput(`missing FILE.json, expected the path of ${what}`);
  if (more.length > 0) throw new BadInput(`unknown argument: ${more[0]}, expected one FILE.json`);
  const path = resolve(file);
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    throw new BadInput(`invalid FILE: ${file}, expected a file that can be read (${reason(error)})`);
  });
  try {
    return { path, raw: JSON.parse(text.replace(/^\uFEFF/, '')) as unknown };
  } catch (error) {
    throw new BadInput(`invalid FILE: ${file}, expected JSON (${reason(error)})`);
  }
}

const reason = (error: unknown): string => (error instanceof Error ? error.message.replace(/\s+/g, ' ') : '');
