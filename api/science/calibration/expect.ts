// What the model expects a weighing to find, under given factors, and how that answers to each of them.
import type { RoomAir } from '../climate.ts';
import type { Condition } from '../condition.ts';
import { scoopDepthM } from '../events.ts';
import { courseOf } from '../exposure.ts';
import { hysteresisSd } from '../judge.ts';
import { receiptName, startName, valueOf, type Values } from './factors.ts';
import { movedTo } from './moved.ts';
import { answering, type Answering, type Slope, type Slopes } from './slopes.ts';
import type { Weighed, Weighing } from './weighing.ts';

/** Found and expected in kg/kg, for a gain in kg. */
export interface Expected {
  readonly weighing: Weighing;
  readonly found: number;
  readonly expected: number;
  /** One sigma of the weighing itself and of what the model leaves out there. */
  readonly noise: number;
  readonly slopes: Slopes;
  /** Why it teaches nothing; null where it does. */
  readonly unusable: string | null;
}

interface Glance {
  readonly whole: Answering;
  readonly scoop: Answering;
  readonly dryKg: number;
  /** One sigma of the water by hysteresis, kg/kg of each kg/kg. */
  readonly hysteresis: number;
  readonly unusable: string | null;
}

function unusable({ airKnown, wetted, condensing, dryKg }: Condition): string | null {
  if (wetted) return 'wetted with solvent';
  if (!airKnown) return 'no air record before it';
  if (condensing) return 'wetter than the model reaches';
  return dryKg > 0 ? null : 'nothing left in it';
}

function glance(weighed: Weighed, condition: Condition): Glance {
  const { depthM } = condition.bed.grid;
  const scoopM = scoopDepthM(weighed.input.spec, condition);
  const whole = answering(weighed, condition, depthM);
  return {
    whole,
    scoop: scoopM < depthM ? answering(weighed, condition, scoopM) : whole,
    dryKg: condition.dryKg,
    hysteresis: hysteresisSd(condition),
    unusable: unusable(condition),
  };
}

function gained(now: Glance, then: Glance): Answering {
  const slopes = new Map<string, Slope>();
  for (const [name, { value, sd }] of now.whole.slopes) slopes.set(name, { value: now.dryKg * value, sd });
  for (const [name, { value, sd }] of then.whole.slopes) {
    slopes.set(name, { value: (slopes.get(name)?.value ?? 0) - now.dryKg * value, sd });
  }
  return {
    water: now.dryKg * (now.whole.water - then.whole.water),
    slopes,
    blur: now.dryKg * Math.abs(now.whole.blur - then.whole.blur),
  };
}

/** Factors that the fold itself does not move: their part is added. */
function added(slopes: Slopes, values: Values, isOutside: (name: string) => boolean): number {
  let sum = 0;
  for (const [name, { value }] of slopes) if (isOutside(name)) sum += value * valueOf(values, name);
  return sum;
}

/** Expectations of one container's weighings, in the order given. */
export function expect(
  weighed: Weighed,
  weighings: readonly Weighing[],
  values: Values,
  airOf?: (air: RoomAir, bias: number) => RoomAir,
): Expected[] {
  const { input } = weighed;
  const { key } = input.spec;
  const within = (atS: number): boolean => atS >= input.start.atS;
  const instants = new Set<number>();
  for (const { atS, found } of weighings) {
    if (within(atS)) instants.add(atS);
    if (found.of === 'gain' && within(found.sinceS)) instants.add(found.sinceS);
  }
  const instantsS = [...instants].sort((one, other) => one - other);
  const glances = new Map<number, Glance>();
  const moved = movedTo(weighed, values, airOf);
  courseOf(
    { ...moved, asOfS: instantsS.at(-1) ?? input.start.atS },
    {
      instantsS,
      told: (condition) => glances.set(instantsS[glances.size]!, glance(weighed, condition)),
    },
  );
  // What is poured together starts anew, and no action of the fold carries that start's factor.
  const joined = new Set(input.actions.flatMap(({ kind, atS }) => (kind === 'combined' ? [startName(key, atS)] : [])));
  const isOutside = (name: string): boolean => name.startsWith('receipt:') || joined.has(name);
  return weighings.map((weighing) => {
    const { found, atS } = weighing;
    const now = glances.get(atS);
    const then = found.of === 'gain' ? glances.get(found.sinceS) : now;
    const of = found.of === 'gain' ? found.gainKg : found.waterFraction;
    if (!now || !then) return lost(weighing, of, 'before its history began');
    const answer = found.of === 'gain' ? gained(now, then) : found.of === 'whole' ? now.whole : now.scoop;
    const slopes = new Map(answer.slopes);
    if (found.of === 'gain') slopes.set(receiptName(key, found.sinceS), { value: -1, sd: found.sdKg });
    const gross = found.of === 'gain' && now.dryKg !== then.dryKg ? 'something was taken out or put in between' : null;
    return {
      weighing,
      found: of,
      expected: answer.water + added(slopes, values, isOutside),
      noise: Math.hypot(
        found.of === 'gain' ? found.sdKg : found.sd,
        answer.blur,
        now.hysteresis * Math.abs(answer.water),
      ),
      slopes,
      unusable: now.unusable ?? then.unusable ?? gross,
    };
  });
}

const lost = (weighing: Weighing, found: number, reason: string): Expected => ({
  weighing,
  found,
  expected: NaN,
  noise: NaN,
  slopes: new Map(),
  unusable: reason,
});
