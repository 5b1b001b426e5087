// How long a load needs in an oven, by the tray model: until it is hot, and until its wettest spot is dry. Kept by what goes in,
// so that a plan of hundreds of loads asks the model a few dozen times.
import { forecast, timeDoubt } from '../science/tray/forecast.ts';
import { restingWater } from '../science/tray/residual.ts';
import { dryingSorbent } from '../science/tray/properties.ts';
import { assumedWater, loadIn, trayOven, type InOven } from './tray.ts';

export interface OvenMinutes {
  /** Until the load is as hot as the oven, less a few degrees; null when not within a day. */
  readonly hot: number | null;
  /** Until its wettest spot is at the target, on the slow side of what the model is sure of; null when not within a day. */
  readonly dry: number | null;
  /** What such an oven never takes out, kg/kg dry. */
  readonly floor: number;
}

const minuteS = 60;
const longestS = 86_400;
/** As hot as the oven, K. */
const hotWithinK = 5;

/** When heat is looked at: every minute at first, later every twentieth of the time that has passed, s. */
const looks: readonly number[] = (() => {
  const at: number[] = [];
  for (let second = minuteS; second <= longestS; second += Math.max(minuteS, second / 20)) at.push(Math.round(second));
  return at;
})();

/** Up to the next whole step, so that inputs a hair apart are one and the answer is never too short. */
const upTo = (value: number, step: number): number => Number((Math.ceil(value / step - 1e-9) * step).toPrecision(6));

/** What goes in, on a grid a chemist would not tell from it: 0.5 % of water, half a millimetre, a millibar; what does not count left out. */
function coarse(of: InOven): InOven {
  const { isPlates, isVacuum, oven, depthMm, layerMm, waterFraction, roomVapourPa, trayAreaM2 } = of;
  const pumped = isVacuum && oven.kind === 'VACUUM';
  return {
    ...of,
    depthMm: depthMm === null || isPlates ? null : upTo(depthMm, 0.5),
    layerMm: isPlates ? layerMm : null,
    waterFraction: upTo(waterFraction ?? assumedWater, 0.005),
    roomVapourPa: roomVapourPa === null || pumped ? null : upTo(roomVapourPa, 100),
    trayAreaM2: trayAreaM2 === null || !pumped || oven.pumpM3PerH === null ? null : upTo(trayAreaM2, 0.02),
  };
}

const most = 2000;
const known = new Map<string, OvenMinutes>();

function reckoned(of: InOven, target: number): OvenMinutes | null {
  const load = loadIn(of);
  if (!load) return null;
  const sorbent = dryingSorbent(of.sorbentClass);
  const oven = trayOven(of);
  const floor = sorbent ? restingWater(sorbent.isotherm, of.temperatureC, oven.vapourPa) : 0;
  const { moments, crossings } = forecast(load, { atS: looks, targets: [target], mostS: longestS, profileAtS: null });
  const isHot = ({ centreC, trayC }: { centreC: number; trayC: number }) =>
    Math.min(centreC, trayC) >= of.temperatureC - hotWithinK;
  const hot = moments.find(isHot)?.second ?? null;
  const dry = crossings[0]?.wettestS ?? null;
  const slow = dry === null ? null : Math.ceil(((1 + timeDoubt) * dry) / minuteS);
  return { hot: hot === null ? null : Math.ceil(hot / minuteS), dry: slow, floor };
}

/** Null for a class of which the model knows nothing. */
export function ovenMinutes(exact: InOven, target: number): OvenMinutes | null {
  const of = coarse(exact);
  const { kind, hasFan, pressureMbar, waterMbar, pumpM3PerH } = of.oven;
  const key = JSON.stringify([{ ...of, oven: [kind, hasFan, pressureMbar, waterMbar, pumpM3PerH] }, target]);
  const before = known.get(key);
  if (before) return before;
  const found = reckoned(of, target);
  if (!found) return null;
  if (known.size >= most) known.delete(known.keys().next().value ?? '');
  known.set(key, found);
  return found;
}
