// Far: a sensor that reads something else than two or more others that agree.
import { median } from '../median.ts';
import { between, dayMs, hourMs, type Series } from '../series.ts';
import { mean, type Measure, type Span } from './fault.ts';

/** Between an hour's mean and the median of the others'. Air that is 5 K warmer reads about 15 % RH drier. */
const far = { temperature: 5, humidity: 15 };

/** Most of them stand near their middle: the median distance from it is half of what is far, or less. */
function agree(values: readonly number[], middle: number, measure: Measure): boolean {
  return median(values.map((value) => Math.abs(value - middle))) <= far[measure] / 2;
}

/** Where the others disagree among themselves nobody can say which is right, and all are kept; so are two alone. */
export function farSpans(
  sensor: number,
  measure: Measure,
  own: Series,
  others: readonly Series[],
  day: number,
): Span[] {
  const found: Span[] = [];
  if (others.length < 2) return found;
  for (let hour = (day - 1) * dayMs; hour < (day + 2) * dayMs; hour += hourMs) {
    const here = mean(between(own, hour, hour + hourMs).values);
    const there = others.map((other) => mean(between(other, hour, hour + hourMs).values)).filter(Number.isFinite);
    const middle = median(there);
    const value = here - middle;
    if (there.length >= 2 && Math.abs(value) > far[measure] && agree(there, middle, measure)) {
      found.push({ sensor, measure, fault: 'far from the others', fromMs: hour, untilMs: hour + hourMs - 1, value });
    }
  }
  return found;
}
