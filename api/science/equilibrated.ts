// A sorbent's own isotherm from samples weighed after standing at known humidities: what is fitted, how sure it is where,
// and what so few points cannot tell.
import { referenceActivity } from './air.ts';
import { fitIsotherm, type Point } from './fit.ts';
import type { CapacityDoubt, IsothermNumbers } from './history.ts';
import { condensingActivity, waterAtActivity } from './isotherm.ts';

export interface WeighedPoint extends Point {
  /** One sigma of the water fraction that whoever weighed gives it; null: what one equilibration is usually worth. */
  readonly sd: number | null;
}

export interface CurvePoint {
  /** Relative humidity at 25 °C, 0 to 1. */
  readonly humidity: number;
  readonly before: number;
  readonly fitted: number;
  /** 90 % range of the fitted one. */
  readonly low: number;
  readonly high: number;
}

export interface Equilibrated {
  readonly isotherm: IsothermNumbers;
  readonly doubt: CapacityDoubt;
  /** Root mean square of ln(measured / fitted). */
  readonly rms: number;
  readonly curve: readonly CurvePoint[];
  /** What these points leave open, each in one sentence. */
  readonly cannotTell: readonly string[];
  /** What looks wrong but may be true. */
  readonly notes: readonly string[];
}

/** Below this activity a film decides, above the other end pores that fill; between them the doubt rises. */
const filmEnds = 0.6;
const poresFrom = 0.7;
const steps = 45;
const mostShown = 0.9;
/** Times more or less than its class holds, from which on a weighing is questioned. */
const farTimes = 4;

/** One sigma of ln(capacity) at a reference activity. */
function doubtAt({ below, above, from, to }: CapacityDoubt, activity: number): number {
  const share = Math.min(1, Math.max(0, (activity - from) / (to - from)));
  return below + (above - below) * share;
}

const activityOf = ({ humidity, temperatureC }: Point): number => referenceActivity(humidity, temperatureC);
const percentOf = (fraction: number): string => `${(100 * fraction).toFixed(1)} %`;

/** The points tell of film or pores only where some of them lie; elsewhere the class's own doubt stays. */
function doubtOf(points: readonly WeighedPoint[], fitted: CapacityDoubt, before: CapacityDoubt): CapacityDoubt {
  const relative = points.map(({ sd, waterFraction }) => (sd === null ? 0 : sd / waterFraction));
  const own = Math.sqrt(relative.reduce((sum, one) => sum + one ** 2, 0) / points.length);
  const at = points.map(activityOf);
  const film = Math.hypot(fitted.below, own);
  const pores = Math.hypot(fitted.above, own);
  return {
    below: at.some((a) => a < poresFrom) ? film : Math.max(film, before.below),
    above: at.some((a) => a > filmEnds) ? pores : Math.max(pores, before.above),
    from: filmEnds,
    to: poresFrom,
  };
}

function leftOpen(points: readonly WeighedPoint[], className: string): string[] {
  const at = points.map(activityOf);
  const [least, most] = [Math.min(...at), Math.max(...at)];
  const sentences: string[] = [];
  if (points.length < 4) {
    const many = points.length === 1 ? 'One point cannot' : `${points.length} points cannot`;
    sentences.push(`${many} tell the shape: the curve keeps that of ${className}, made higher or lower as a whole.`);
  }
  if (most < filmEnds) {
    sentences.push(
      `Nothing was weighed above ${Math.round(100 * most)} % RH: where pores fill is still what ${className} has.`,
    );
  }
  if (least > poresFrom) {
    sentences.push(`Nothing was weighed below ${Math.round(100 * least)} % RH: in dry air it is still a guess.`);
  } else if (least > 0.3) {
    sentences.push(`Below ${Math.round(100 * least)} % RH the curve is drawn on, not weighed.`);
  }
  sentences.push(
    'A sample that came down from wetter air holds more, up to twice as much at 50 to 80 % RH: let it come up from dry.',
  );
  return sentences;
}

function questions(points: readonly WeighedPoint[], base: IsothermNumbers, className: string): string[] {
  const notes: string[] = [];
  for (const point of points) {
    const usual = waterAtActivity(base, activityOf(point));
    const times = point.waterFraction / usual;
    if (times < farTimes && times > 1 / farTimes) continue;
    const much = times > 1 ? `${times.toFixed(0)} times` : `a ${(1 / times).toFixed(0)}th of`;
    notes.push(
      `${percentOf(point.waterFraction)} at ${Math.round(100 * point.humidity)} % RH is ${much} what ${className} holds there: is the tare right, and was it left long enough?`,
    );
  }
  const rising = [...points].sort((one, other) => activityOf(one) - activityOf(other));
  for (const [i, point] of rising.entries()) {
    const before = rising[i - 1];
    if (!before || point.waterFraction > 0.85 * before.waterFraction) continue;
    notes.push(
      `At ${Math.round(100 * point.humidity)} % RH it weighed less water than at ${Math.round(100 * before.humidity)} % RH: one of the two was not at rest yet.`,
    );
  }
  return notes;
}

/** The water of a class and its fitted one over humidity, for a picture. */
function curveOf(base: IsothermNumbers, isotherm: IsothermNumbers, doubt: CapacityDoubt): CurvePoint[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const humidity = (mostShown * i) / steps;
    const fitted = waterAtActivity(isotherm, humidity);
    const spread = Math.exp(1.645 * doubtAt(doubt, humidity));
    return { humidity, before: waterAtActivity(base, humidity), fitted, low: fitted / spread, high: fitted * spread };
  });
}

/** Null when no point has water below condensation. */
export function equilibrated(
  base: { isotherm: IsothermNumbers; doubt: CapacityDoubt; name: string },
  points: readonly WeighedPoint[],
): Equilibrated | null {
  const fit = fitIsotherm(base.isotherm, points);
  if (!fit) return null;
  const used = points.filter(({ humidity, waterFraction }) => waterFraction > 0 && humidity < condensingActivity);
  const doubt = doubtOf(used, fit.doubt, base.doubt);
  return {
    isotherm: fit.isotherm,
    doubt,
    rms: fit.rms,
    curve: curveOf(base.isotherm, fit.isotherm, doubt),
    cannotTell: leftOpen(used, base.name),
    notes: questions(used, base.isotherm, base.name),
  };
}
