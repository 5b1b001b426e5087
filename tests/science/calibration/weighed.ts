// A lab's containers put on the balance in one of four ways, each with its own noise.
import { weighingNoise, type Weighing } from '../../../api/science/calibration/weighing.ts';
import { dayZero, dice, normalDraw } from '../support/lab.ts';
import type { Lab } from './labs.ts';

/** A scoop and the whole; a scoop; a sample of the rolled drum; the whole against what it weighed when it came in. */
export type Way = 'both' | 'scoop' | 'mixed' | 'whole';

/** One gross error among the occasions of each container: a sample by 3 % of water, the whole by 10 g. */
const gross = { waterFraction: 0.03, gainKg: 0.01 } as const;

export function weigh(lab: Lab, way: Way, withGross = false): Weighing[] {
  const roll = dice(104_729 * (lab.seed + 1));
  const draw = (sd: number): number => sd * normalDraw(roll);
  const all: Weighing[] = [];
  for (const [container, occasions] of lab.occasions) {
    const receiptKg = draw(weighingNoise.wholeKg);
    const wrongAt = withGross ? Math.floor(roll() * occasions.length) : -1;
    for (const [i, { atS, mean, scoop, gainKg }] of occasions.entries()) {
      const wrong = i === wrongAt ? (roll() < 0.5 ? -1 : 1) : 0;
      const add = (name: string, found: Weighing['found']) =>
        all.push({
          id: `${container} ${i} ${name}${wrong === 0 ? '' : ' wrong'}`,
          container,
          atS,
          found,
          confirmed: false,
        });
      const sample = (water: number): number =>
        water + draw(weighingNoise.sampleFraction) + wrong * gross.waterFraction;
      const sd = weighingNoise.sampleFraction;
      if (way === 'both' || way === 'scoop') add('scoop', { of: 'scoop', waterFraction: sample(scoop), sd });
      if (way === 'mixed') add('mixed', { of: 'whole', waterFraction: sample(mean), sd });
      if (way === 'both' || way === 'whole') {
        const shown = gainKg + draw(weighingNoise.wholeKg) - receiptKg + wrong * gross.gainKg;
        add('gain', { of: 'gain', gainKg: shown, sinceS: dayZero, sdKg: weighingNoise.wholeKg });
      }
    }
  }
  return all;
}
