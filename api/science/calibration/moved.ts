// A container's history under other factors than those it was told under: its start, and its air.
import type { RoomAir } from '../climate.ts';
import type { Action, FoldInput, Handover, Start } from '../history.ts';
import { biased } from './biased.ts';
import { className, containerName, foldFactors, lotName, startName, valueOf, type Values } from './factors.ts';
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
function handed(handover: Handover, { input, lot, pool, handedFillS }: Weighed, values: Values): Handover {
  const before = new Map(input.factors.map(({ factor, ln }) => [factor, ln]));
  const since = (name: string, ln: number): number => ln - (before.get(name) ?? 0);
  let capacity = handover.waterFraction;
  let change = 0;
  for (const { factor, value } of handover.factors) {
    if (factor !== 'bias') capacity -= value;
    if (factor.startsWith('start:')) {
      change += value * valueOf(values, startName(factor.slice('start:'.length), handedFillS ?? 'handed'));
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
  const { start, spec } = weighed.input;
  const { water } = start;
  if (water.kind === 'handover') {
    return { ...start, water: { kind: 'handover', handover: handed(water.handover, weighed, values) } };
  }
  const times = Math.exp(valueOf(values, startName(spec.key, start.atS)));
  return water.kind === 'known'
    ? { ...start, water: { ...water, waterFraction: water.waterFraction * times } }
    : { ...start, water: { ...water, assumedWaterFraction: water.assumedWaterFraction * times } };
}

/** Where a humidity that somebody told is kept when the bias moves it. */
const leastHumidity = 1e-3;
const mostHumidity = 0.94;

/**
 * The history under these factors, without its weighings: those are what is learned from, and nothing may count twice. A later
 * drying's water moves with its own factor.
 */
export function movedTo(
  weighed: Weighed,
  values: Values,
  airOf: (air: RoomAir, bias: number) => RoomAir = biased,
): FoldInput {
  const { input, lot, pool } = weighed;
  const { key } = input.spec;
  const bias = valueOf(values, 'bias');
  return {
    ...input,
    checkpoint: null,
    start: begun(weighed, values),
    actions: input.actions
      .filter(({ kind }) => kind !== 'observed')
      .map((action): Action => {
        if (action.kind === 'equilibrated') {
          return { ...action, humidity: Math.min(mostHumidity, Math.max(leastHumidity, action.humidity + bias)) };
        }
        if (action.kind !== 'dried') return action;
        const times = Math.exp(valueOf(values, startName(key, action.atS)));
        return { ...action, waterFraction: action.waterFraction * times };
      }),
    airs: new Map([...input.airs].map(([room, air]) => [room, airOf(air, bias)])),
    factors: foldFactors(values, pool, lot, key),
  };
}
