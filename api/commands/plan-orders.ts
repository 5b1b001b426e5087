// `npm run --silent plan-orders -- FILE.json`: what to order from whom and when, and how good that is, as JSON.
import loadHighs from 'highs';
import { BadInput } from '../bad-input.ts';
import { planPurchase } from '../science/purchase/programme.ts';
import { bar } from './bar.ts';
import { endWith } from './ending.ts';
import { jsonFile } from './json.ts';
import { planOrdersOf } from './plan-orders/input.ts';

async function run(args: readonly string[]): Promise<number> {
  const option = args.find((word) => word.startsWith('-'));
  if (option !== undefined) throw new BadInput(`unknown argument: ${option}, expected FILE.json`);
  const { raw } = await jsonFile(args, 'items, lots, suppliers and offers');
  const problem = planOrdersOf(raw);
  const from = performance.now();
  const seconds = () => (performance.now() - from) / 1000;
  const { progress, stop } = bar('Planning');
  const answer = planPurchase(problem, await loadHighs(), { seconds, cancelled: () => false, progress });
  stop();
  // Sentences are said whole here; by their parts they are for programs that say days for weeks.
  const { status, cost, bound, gap, gapControllable, warningParts: _, ...rest } = answer;
  const orders = answer.orders.map(({ reasonParts: __, ...order }) => order);
  console.log(
    JSON.stringify({ status, cost, bound, gap, gapControllable, seconds: seconds(), ...rest, orders }, null, 2),
  );
  return 0;
}

await endWith(run(process.argv.slice(2)));
