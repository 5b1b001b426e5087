// A year of purchases of 40 items from three suppliers, planned within 10 s: the proven gap and the seconds of CPU.
import loadHighs from 'highs';
import { planPurchase } from '../../api/science/purchase/programme.ts';
import { amount } from '../support/amount.ts';
import { yearOfPurchases } from '../support/purchases.ts';
import { type Bench, quantile, spread } from './bench.ts';

const seconds = 10;

export async function purchase40x52(short: boolean): Promise<Bench> {
  const highs = await loadHighs();
  const years = Array.from({ length: short ? 1 : amount(3, 10) }, (_, i) => {
    const from = process.cpuUsage();
    const spent = () => {
      const { user, system } = process.cpuUsage(from);
      return (user + system) / 1e6;
    };
    const answer = planPurchase(yearOfPurchases(101 + i, { seconds }), highs, {
      seconds: spent,
      cancelled: () => false,
      progress: () => undefined,
    });
    return { answer, seconds: spent() };
  });
  const gaps = years.map(({ answer }) => answer.gap ?? 1);
  const changeable = years.map(({ answer }) => answer.gapControllable ?? 1);
  const times = years.map((year) => year.seconds);
  const [median, worst] = [quantile(gaps, 0.5), Math.max(...gaps)];
  const value = Math.max(...times);
  return {
    value,
    unit: 's of CPU, slowest plan',
    against: 'ten seconds',
    ratio: value / seconds,
    spread: spread(times),
    details: {
      years: years.length,
      'gap, median (target 0.015)': median,
      'gap, worst (target 0.03)': worst,
      'gap of what planning can change, median': quantile(changeable, 0.5),
      met: value <= seconds && median <= 0.015 && worst <= 0.03,
    },
  };
}
