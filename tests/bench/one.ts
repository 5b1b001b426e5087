// Runs one bench, in a process of its own so that none warms or burdens another, and prints its answer as JSON.
import type { Bench } from './bench.ts';

const [name = '', length] = process.argv.slice(2);
const exported = (await import(`./${name}.ts`)) as Record<string, unknown>;
const isBench = (value: unknown): value is (short: boolean) => Promise<Bench> => typeof value === 'function';
const run = Object.values(exported).find(isBench);
if (run === undefined) throw new Error(`tests/bench/${name}.ts exports no bench`);
const answer = await run(length === 'short');
process.stdout.write(JSON.stringify(answer), () => process.exit(0));
