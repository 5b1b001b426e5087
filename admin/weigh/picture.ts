// A factor in one picture: what was assumed, what each weighing says, what is held now, on one axis. Logarithmic, but for the
// humidity, which is added.
import type { Factor } from './questions.ts';

export interface Mark {
  /** From the left, in hundredths of the axis. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** It lies beyond the axis on that side. */
  readonly beyond: 'left' | 'right' | null;
}

export interface Picture {
  readonly assumed: Mark;
  readonly says: readonly Mark[];
  readonly now: Mark;
  readonly ticks: readonly { at: number; label: string }[];
}

type Kind = Factor['kind'];
type Pictured = Pick<Factor, 'kind' | 'priorLow' | 'priorHigh' | 'value' | 'low' | 'high'> & {
  readonly says: readonly Pick<Factor['says'][number], 'value' | 'low' | 'high'>[];
};

const isAdded = (kind: Kind): boolean => kind === 'HUMIDITY';
const placeOf = (kind: Kind, value: number): number => (isAdded(kind) ? value : Math.log(value));

/** Ends of the axis, each side as far, that show both ranges with a little air. */
function reachOf({ kind, priorLow, priorHigh, low, high }: Pictured): number {
  const ends = [priorLow, priorHigh, low, high].map((value) => Math.abs(placeOf(kind, value)));
  return 1.12 * Math.max(...ends.filter(Number.isFinite), isAdded(kind) ? 0.02 : Math.log(1.5));
}

const factors = [0.05, 0.1, 0.2, 0.33, 0.5, 0.7, 1, 1.4, 2, 3, 5, 10, 20];
const points = [-0.1, -0.05, -0.04, -0.02, 0, 0.02, 0.04, 0.05, 0.1];
/** Labels closer than this would touch on a telephone, hundredths of the axis. */
const least = 17;

function ticksOf(kind: Kind, reach: number): Picture['ticks'] {
  const all = (isAdded(kind) ? points : factors).map((value) => ({
    at: 50 + (50 * placeOf(kind, value)) / reach,
    label: isAdded(kind) ? (value === 0 ? '0' : `${value > 0 ? '+' : '−'}${Math.abs(100 * value)} %`) : String(value),
  }));
  const inside = all.filter(({ at }) => at >= 3 && at <= 97);
  const middle = inside.find(({ at }) => at === 50);
  const kept = middle ? [middle] : [];
  const byNearness = [...inside].sort((one, other) => Math.abs(one.at - 50) - Math.abs(other.at - 50));
  for (const tick of byNearness) if (kept.every(({ at }) => Math.abs(at - tick.at) >= least)) kept.push(tick);
  return kept.sort((one, other) => one.at - other.at);
}

export function pictureOf(factor: Pictured): Picture {
  const { kind } = factor;
  const reach = reachOf(factor);
  const clipped = (value: number): number => Math.min(100, Math.max(0, value));
  const along = (value: number): number => {
    const place = placeOf(kind, value);
    return Number.isNaN(place) ? 0 : 50 + (50 * place) / reach;
  };
  const mark = (value: number, low: number, high: number): Mark => {
    const at = along(value);
    return {
      at: clipped(at),
      from: clipped(along(low)),
      to: clipped(along(high)),
      beyond: at < 0 ? 'left' : at > 100 ? 'right' : null,
    };
  };
  const middle = isAdded(kind) ? 0 : 1;
  return {
    assumed: mark(middle, factor.priorLow, factor.priorHigh),
    says: factor.says.map(({ value, low, high }) => mark(value, low, high)),
    now: mark(factor.value, factor.low, factor.high),
    ticks: ticksOf(kind, reach),
  };
}

/** Little was learned where the doubt is nearly what it was and nothing moved by most of it. */
export const isClear = ({ kind, value, sd, priorSd }: Pick<Factor, 'kind' | 'value' | 'sd' | 'priorSd'>): boolean =>
  sd < 0.85 * priorSd || Math.abs(placeOf(kind, value)) > 0.75 * priorSd;
