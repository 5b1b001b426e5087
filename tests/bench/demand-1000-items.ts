// A thousand items with five years of weekly use each: the table read, method, errors and lead-time quantiles, in CPU seconds.
import { historiesOf } from '../../api/commands/demand/table.ts';
import { countQuantile } from '../../api/science/distributions/counts.ts';
import { forecastOf } from '../../api/science/demand/forecast.ts';
import { dice } from '../science/support/lab.ts';
import { type Bench, quantile, spread } from './bench.ts';

const lead = [
  { weeks: 2, chance: 0.25 },
  { weeks: 3, chance: 0.5 },
  { weeks: 4, chance: 0.25 },
];

/** Lumpy use: most weeks nothing, else plates, or grams in hundreds to thousands. */
function table(count: number): string {
  const chance = dice(11);
  const lines = Array.from({ length: count }, (_, item) => {
    const busy = 0.05 + 0.6 * chance();
    const size = item % 2 === 0 ? 8 : 2500;
    return Array.from({ length: 260 }, (_, week) => {
      const quantity = chance() < busy ? Math.ceil(size * chance() ** 2) : 0;
      return `item ${item},${week + 1},${quantity}\n`;
    }).join('');
  });
  return `item,week,quantity\n${lines.join('')}`;
}

export async function demand(short: boolean): Promise<Bench> {
  const text = table(1000);
  const once = (): number => {
    const from = process.cpuUsage();
    for (const { weeks } of historiesOf(text)) {
      const forecast = forecastOf(weeks, lead);
      if (forecast) for (const service of [0.5, 0.9, 0.95, 0.99]) countQuantile(forecast.leadTime.counts, service);
    }
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1e6;
  };
  const times = Array.from({ length: short ? 2 : 7 }, once);
  const value = quantile(times, 0.5);
  return {
    value,
    unit: 's for 1,000 items of 260 weeks',
    against: 'nothing',
    ratio: null,
    spread: spread(times),
    details: { 'target s': 5, met: Math.max(...times) <= 5, 'first, cold s': times[0] ?? NaN },
  };
}
