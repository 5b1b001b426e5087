// `npm run --silent bench -- [--json] [--only NAME] [--short]`: our figures beside those of what they are measured against.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Bench } from './bench.ts';

const names = [
  'exposure-day',
  'exposure-fleet',
  'listing',
  'ingest',
  'admin-load',
  'admin-tap',
  'year-of-air',
  'what-if',
  'scan',
  'list-1000',
  'tray',
  'ovens-60',
  'ovens-200',
  'demand-1000-items',
  'calibration',
  'prep-sheet',
  'purchase-40x52',
  'ledger',
];
const file = (name: string) => fileURLToPath(new URL(`./${name}.ts`, import.meta.url));

/** The bench's answer, or null when it failed; what it says on standard error is passed on. */
function answerOf(name: string, short: boolean): Promise<Bench | null> {
  const args = [...process.execArgv, file('one'), name, short ? 'short' : 'full'];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let text = '';
  child.stdout.setEncoding('utf8').on('data', (part: string) => (text += part));
  return new Promise((answer, failed) => {
    child.on('error', failed);
    child.on('close', (code) => answer(code === 0 ? (JSON.parse(text) as Bench) : null));
  });
}

const number = (value: number) =>
  Math.abs(value) >= 1000 ? Math.round(value).toLocaleString('en') : value.toPrecision(3);

function line(name: string, { value, unit, against, ratio, spread, details }: Bench): string {
  const beside = ratio === null ? '' : `, ${number(ratio)} of ${against}`;
  const more = Object.entries(details ?? {}).map(
    ([key, detail]) => `\n    ${key}: ${typeof detail === 'number' ? number(detail) : detail}`,
  );
  return `${name}: ${number(value)} ${unit}${beside} (spread ${(spread * 100).toFixed(0)} %)${more.join('')}`;
}

async function main(): Promise<number> {
  const { values } = parseArgs({
    options: { json: { type: 'boolean' }, only: { type: 'string' }, short: { type: 'boolean' } },
  });
  const there = names.filter((name) => existsSync(file(name)));
  if (values.only !== undefined && !there.includes(values.only)) {
    console.error(`unknown --only: ${values.only}, one of ${there.join(', ')}`);
    return 1;
  }
  const benches: Record<string, Bench> = {};
  let failed = false;
  for (const name of values.only === undefined ? there : [values.only]) {
    console.error(`${name} …`);
    const answer = await answerOf(name, values.short === true);
    if (answer === null) failed = true;
    else benches[name] = answer;
    if (answer !== null && values.json !== true) console.log(line(name, answer));
  }
  if (values.json === true) console.log(JSON.stringify({ benches }, null, 2));
  return failed ? 2 : 0;
}

try {
  process.exitCode = await main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
