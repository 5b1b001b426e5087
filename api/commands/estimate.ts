// `npm run --silent estimate -- FILE.json`: one container's exposure without a database, as JSON.
import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { BadInput, endWith } from './ending.ts';
import { readingsOf } from './estimate/air.ts';
import { estimate } from './estimate/exposure.ts';
import { scenarioOf } from './estimate/scenario.ts';

async function run(arguments_: readonly string[]): Promise<number> {
  const [file, ...more] = arguments_;
  if (file === undefined) throw new BadInput('missing FILE.json, expected the path of a scenario');
  if (more.length > 0) throw new BadInput(`unknown argument: ${more[0]}, expected one FILE.json`);
  const path = resolve(file);
  const text = await readFile(path, 'utf8').catch((error: unknown) => {
    throw new BadInput(
      `invalid FILE: ${file}, expected a file that can be read (${error instanceof Error ? error.message : ''})`,
    );
  });
  const scenario = scenarioOf(parsed(text, file));
  const readings = await readingsOf(scenario, dirname(path));
  console.log(JSON.stringify(estimate(scenario, readings), null, 2));
  return 0;
}

function parsed(text: string, file: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new BadInput(
      `invalid FILE: ${file}, expected JSON (${error instanceof Error ? error.message.replace(/\s+/g, ' ') : ''})`,
    );
  }
}

await endWith(run(process.argv.slice(2)));
