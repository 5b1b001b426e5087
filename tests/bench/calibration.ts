// A class refitted from all its weighings: 200 silica containers of twenty lots, ten weighings each in sixty days; and the answer
// to one more weighing. Truth comes from the estimator itself: here only time counts.
import { expect } from '../../api/science/calibration/expect.ts';
import { learn } from '../../api/science/calibration/learn.ts';
import type { Weighed, Weighing } from '../../api/science/calibration/weighing.ts';
import { labOf } from '../science/calibration/labs.ts';
import { dice, normalDraw } from '../science/support/lab.ts';
import { type Bench, spread, quantile } from './bench.ts';

const perLab = 10;
const occasions = 10;

/** Histories of a few labs told again and again under other keys, lots and draws. */
function classOf(containers: number): { weighed: Weighed[]; weighings: Weighing[] } {
  const roll = dice(20_260_302);
  const draw = (sd: number): number => sd * normalDraw(roll);
  const lab = labOf(0, { containers: perLab, occasions: 1 });
  const shared = new Map(['bed', 'open', 'closed:tight', 'closed:well closed'].map((name) => [name, draw(0.2)]));
  const weighed: Weighed[] = [];
  const weighings: Weighing[] = [];
  for (let n = 0; n < containers; n++) {
    const told = lab.containers[n % perLab];
    if (!told) break;
    const key = `c${n}`;
    const one = { ...told, lot: `${n % 20}`, input: { ...told.input, spec: { ...told.input.spec, key } } };
    const asked = Array.from({ length: occasions }, (_, i): Weighing => {
      const atS = told.input.start.atS + 6 * (i + 1) * 86_400;
      const found =
        i % 2 === 0
          ? ({ of: 'scoop', waterFraction: 0, sd: 0.0015 } as const)
          : ({ of: 'gain', gainKg: 0, sinceS: told.input.start.atS, sdKg: 5e-5 } as const);
      return { id: `${key} ${i}`, container: key, atS, found, confirmed: false };
    });
    const truth = new Map(shared).set(`container:${key}`, draw(0.3)).set(`lot:${n % 20}`, 0.2 * Math.sin(n % 20));
    for (const { weighing, expected, noise } of expect(one, asked, truth)) {
      const value = expected + draw(noise);
      const { found } = weighing;
      weighings.push({
        ...weighing,
        found: found.of === 'gain' ? { ...found, gainKg: value } : { ...found, waterFraction: value },
      });
    }
    weighed.push(one);
  }
  return { weighed, weighings };
}

function seconds(work: () => void): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1e6;
}

export function calibration(short: boolean): Promise<Bench> {
  const { weighed, weighings } = classOf(short ? 20 : 200);
  let learned = learn(weighed, weighings);
  const times = Array.from({ length: short ? 1 : 3 }, () => seconds(() => void (learned = learn(weighed, weighings))));
  const changed = new Set(['c0']);
  const next = seconds(() => void learn(weighed, weighings, { learned, changed }));
  const value = quantile(times, 0.5);
  return Promise.resolve({
    value,
    unit: `s CPU to refit a class from ${weighings.length} weighings`,
    against: 'nothing',
    ratio: null,
    spread: spread(times),
    details: {
      'target s': 10,
      met: value <= 10,
      containers: weighed.length,
      factors: learned.values.size,
      iterations: learned.iterations,
      'one more weighing ms': 1000 * next,
    },
  });
}
