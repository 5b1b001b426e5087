// `npm run --silent estimate -- FILE.json`: one container's exposure without a database, as JSON.
import { dirname } from 'node:path';
import { endWith } from './ending.ts';
import { readingsOf } from './estimate/air.ts';
import { estimate } from '../exposure/scenario-estimate.ts';
import { scenarioOf } from '../exposure/scenario.ts';
import { jsonFile } from './json.ts';

async function run(words: readonly string[]): Promise<number> {
  const { path, raw } = await jsonFile(words, 'a scenario');
  const scenario = scenarioOf(raw);
  const readings = await readingsOf(scenario, dirname(path));
  console.log(JSON.stringify(estimate(scenario, readings), null, 2));
  return 0;
}

await endWith(run(process.argv.slice(2)));
