// A container's history under other factors than those it was told under: its start, and its air.
import type { RoomAir } from '../climate.ts';
import type { Action, FoldInput, Handover, Start } from '../history.ts';
import { biased } from './biased.ts';
import { isHumidity } from '../uncertainty.ts';
import {
  className,
  containerName,
  foldFactors,
  lotName,
  saltName,
  startName,
  valueOf,
  type Values,
} from './factors.ts';
import type { Weighed } from './weighing.ts';

/** The air of every room under a bias, each made once. */
export function biasedAirs(): (air: RoomAir, bias: number) => RoomAir {
  const known = new Map<RoomAir, { bias: number; air: RoomAir }>();
  return (air, bias) => {
    const before = known.get(air);
    if (before?.bias === bias) return before.air;
    const made = biased(air, bias);
    known.set(air, { bias, air: made });
    return made;
  };
}

// What was handed over answers to its factors as its responses say; in the logarithm, so that it stays above nothing.
function handed(handover: Handover, { input, lot, pool }: Weighed, values: Values): Handover {
  const before = new Map(input.factors.map(({ factor, ln }) => [factor, ln]));
  const since = (name: string, ln: number): number => ln - (before.get(name) ?? 0);
  let capacity = handover.waterFraction;
  let change = 0;
  for (const { factor, value } of handover.factors) {
    if (!isHumidity(factor)) capacity -= value;
    if (factor.startsWith('salt:')) {
      change += value * valueOf(values, saltName(factor.slice('salt:'.length), handover.fillS ?? 'handed'));
    } else if (factor.startsWith('start:')) {
      change += value * valueOf(values, startName(factor.slice('start:'.length), handover.fillS ?? 'handed'));
    } else if (factor.startsWith('closed:')) {
      const slash = factor.indexOf('/');
      const closure = factor.slice(0, slash);
      change += value * since(closure, valueOf(values, closure));
      change += value * since('container', valueOf(values, containerName(factor.slice(slash + 1))));
    } else change += value * since(factor, valueOf(values, factor));
  }
  change += capacity * since('capacity', valueOf(values, className(pool)) + valueOf(values, lotName(lot)));
  const times = handover.waterFraction > 0 ? Math.exp(change / handover.waterFraction) : 1;
  return {
    ...handover,
    waterFraction: handover.waterFraction * times,
    factors: handover.factors.map(({ factor, value }) => ({ factor, value: value * times })),
  };
}

function begun(weighed: Weighed, values: Values): Start {
  const { water } = weighed.input.start;
  if (water.kind !== 'handover') return filled(weighed.input, values);
  return { ...weighed.input.start, water: { kind: 'handover', handover: handed(water.handover, weighed, values) } };
}

// A start of its own moves with its factor; what was handed over stays as it is.
function filled({ start, spec }: FoldInput, values: Values): Start {
  const { water } = start;
  if (water.kind === 'handover') return start;
  const times = Math.exp(valueOf(values, startName(spec.key, start.atS)));
  return water.kind === 'known'
    ? { ...start, water: { ...water, waterFraction: water.waterFraction * times } }
    : { ...start, water: { ...water, assumedWaterFraction: water.assumedWaterFraction * times } };
}

/** Where a humidity that somebody told is kept when its own doubt moves it. */
const leastHumidity = 1e-3;
const mostHumidity = 0.94;

// What sets the water as a whole moves with a factor of its own.
function moving(action: Action, key: string, values: Values): Action {
  if (action.kind === 'equilibrated') {
    const humidity = action.humidity + valueOf(values, saltName(key, action.atS));
    return { ...action, humidity: Math.min(mostHumidity, Math.max(leastHumidity, humidity)) };
  }
  if (action.kind === 'in oven') {
    return { ...action, times: action.times * Math.exp(valueOf(values, startName(key, action.atS))) };
  }
  if (action.kind !== 'dried' && action.kind !== 'observed') return action;
  const times = Math.exp(valueOf(values, startName(key, action.atS)));
  return times === 1 ? action : { ...action, waterFraction: action.waterFraction * times };
}

type AirOf = (air: RoomAir, bias: number) => RoomAir;

const airsUnder = ({ airs }: FoldInput, values: Values, airOf: AirOf): FoldInput['airs'] =>
  new Map([...airs].map(([room, air]) => [room, airOf(air, valueOf(values, 'bias'))]));

/**
 * The history under these factors, without its weighings but for those before which nothing was known: they are what is
 * learned from, and nothing may count twice. A later drying's water moves with its own factor.
 */
export function movedTo(weighed: Weighed, values: Values, airOf: AirOf = biased): FoldInput {
  const { input, lot, pool } = weighed;
  const { key } = input.spec;
  return {
    ...input,
    checkpoint: null,
    start: begun(weighed, values),
    actions: input.actions
      .filter((action) => action.kind !== 'observed' || action.anew)
      .map((action) => moving(action, key, values)),
    airs: airsUnder(input, values, airOf),
    factors: foldFactors(values, pool, lot, key),
  };
}

/** A history as it is told now, its handovers reckoned under the same factors; from wherever its checkpoint is. */
export const told = (
  input: FoldInput,
  { lot, pool }: { lot: string; pool: string },
  values: Values,
  airOf: AirOf,
): FoldInput => ({
  ...input,
  start: filled(input, values),
  actions: input.actions.map((action) => moving(action, input.spec.key, values)),
  airs: airsUnder(input, values, airOf),
  factors: foldFactors(values, pool, lot, input.spec.key),
});
