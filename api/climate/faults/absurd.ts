// Absurd: what room air cannot be.
import type { Series } from '../series.ts';
import type { Measure, Span } from './fault.ts';

/**
 * The working range of small sensors, °C, and all there is, % RH. A sensor within its ±3 % of the ends reads a
 * little past them; that is taken as the end itself.
 */
const possible = { temperature: { low: -40, high: 85 }, humidity: { low: -3, high: 103 } };

/** A sensor that reads absurdly this often is broken, and its other readings are chance. */
const brokenShare = 0.25;

export function absurdSpans(sensor: number, measure: Measure, { atMs, values }: Series): Span[] {
  const { low, high } = possible[measure];
  const found: Span[] = [];
  values.forEach((value, i) => {
    const at = atMs[i] ?? 0;
    if (value < low || value > high) found.push({ sensor, measure, fault: 'absurd', fromMs: at, untilMs: at, value });
  });
  const last = found.at(-1);
  if (!last || found.length < brokenShare * values.length) return found;
  return [{ ...last, fromMs: atMs[0] ?? 0, untilMs: atMs.at(-1) ?? 0 }];
}
