// `npm run --silent demand -- FILE.csv [--lead 3]`: what each item of a table of weekly use is expected to need, as JSON.
import { readFile } from 'node:fs/promises';
import { countQuantile } from '../science/distributions/counts.ts';
import { fewestWeeks, forecastOf } from '../science/demand/forecast.ts';
import type { Lead } from '../science/demand/lead.ts';
import { BadInput } from '../bad-input.ts';
import { bar } from './bar.ts';
import { endWith } from './ending.ts';
import { askedOf } from './demand/options.ts';
import { historiesOf, type History } from './demand/table.ts';

/** Service levels whose stock is printed. */
const services = [0.5, 0.9, 0.95, 0.99];

function answer({ item, weeks }: History, lead: Lead): unknown {
  const forecast = forecastOf(weeks, lead);
  if (forecast === null) {
    return {
      item,
      weeks: weeks.length,
      method: 'too-little-history',
      rate: null,
      z: null,
      x: null,
      level: null,
      mse: null,
      origins: 0,
      variance: null,
      leadTime: null,
      quantiles: null,
      asks: `a weekly figure, until there are ${fewestWeeks} weeks`,
    };
  }
  const { method, rate, z, x, level, meanSquare, origins, variance, leadTime } = forecast;
  const { mean, counts } = leadTime;
  const wanted = counts.family === 'poisson' ? { r: null, p: null } : { r: counts.r, p: counts.p };
  return {
    item,
    weeks: weeks.length,
    method,
    rate,
    z,
    x,
    level,
    mse: meanSquare,
    origins,
    variance,
    leadTime: { mean, variance: leadTime.variance, family: counts.family, ...wanted },
    quantiles: Object.fromEntries(services.map((service) => [String(service), countQuantile(counts, service)])),
  };
}

async function run(words: readonly string[]): Promise<number> {
  const { file, lead } = askedOf(words);
  const text = await readFile(file, 'utf8').catch(() => {
    throw new BadInput(`invalid FILE: ${file}, expected a file that can be read`);
  });
  const histories = historiesOf(text);
  const { progress, stop } = bar('Forecasting');
  const answers = histories.map((history, i) => {
    progress(i / histories.length);
    return answer(history, lead);
  });
  stop();
  console.log(JSON.stringify(answers, null, 2));
  return 0;
}

await endWith(run(process.argv.slice(2)));
