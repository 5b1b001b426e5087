// Stuck: the same value for hours while the other sensors of the room moved.
import { median } from '../median.ts';
import { between, hourMs, type Series } from '../series.ts';
import { mean, type Measure, type Span } from './fault.ts';

/**
 * Six hours and four readings or more, while the others moved this much. A logger of whole per cents or degrees
 * honestly repeats for hours; it cannot while the air around it moves by several of its steps. A sensor that stands
 * alone is never called stuck: in a desiccator nothing does move.
 */
const stuck = { forMs: 6 * hourMs, readings: 4, othersMoved: { temperature: 3, humidity: 5 } };

/** How far one sensor went between two instants: the range of the means of its hours; NaN when it read nothing. */
function rangeOf(series: Series, fromMs: number, untilMs: number): number {
  let low = Infinity;
  let high = -Infinity;
  for (let hour = Math.floor(fromMs / hourMs) * hourMs; hour <= untilMs; hour += hourMs) {
    const value = mean(between(series, Math.max(hour, fromMs), Math.min(hour + hourMs, untilMs + 1)).values);
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high >= low ? high - low : NaN;
}

/** How far the others went, each for itself: one that misses an hour does not look like a change of the air. */
function movement(others: readonly Series[], fromMs: number, untilMs: number): number {
  return median(others.map((other) => rangeOf(other, fromMs, untilMs)));
}

export function stuckSpans(sensor: number, measure: Measure, own: Series, others: readonly Series[]): Span[] {
  const { atMs, values } = own;
  const found: Span[] = [];
  if (others.length === 0) return found;
  for (let from = 0; from < values.length;) {
    const value = values[from] ?? 0;
    let until = from;
    while (until + 1 < values.length && values[until + 1] === value) until++;
    const fromMs = atMs[from] ?? 0;
    const untilMs = atMs[until] ?? 0;
    const long = untilMs - fromMs >= stuck.forMs && until - from + 1 >= stuck.readings;
    if (long && movement(others, fromMs, untilMs) >= stuck.othersMoved[measure]) {
      found.push({ sensor, measure, fault: 'stuck', fromMs, untilMs, value });
    }
    from = until + 1;
  }
  return found;
}
