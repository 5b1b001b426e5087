/** Raw values and instants to a series in order of time: converted, without what no air can be, each time once. */
import { HUMIDITY, TEMPERATURE } from './file.ts';
import type { LeftOut, Readings, Series, Unit } from './file.ts';
import { POWER_ON_C } from './missing.ts';
import { shownUnit } from './settle.ts';
import type { RawSeries } from './gather.ts';
import { converted } from './unit.ts';

/** One series' share of a section. `at` is NaN for rows left out, or for all rows of a file without times. */
export type Part = { raw: RawSeries; at: Float64Array; lines: Uint32Array };

/**
 * What a room's sensor can show. °C: outdoor air has been from -89.2 to 56.7 (WMO Weather and Climate Extremes Archive); a
 * warm cupboard reaches 100. %: 0 to 100 by definition, with the few percent by which sensors overshoot (common practice).
 */
const POSSIBLE: Record<string, { low: number; high: number; symbol: string }> = {
  [TEMPERATURE]: { low: -90, high: 100, symbol: '°C' },
  [HUMIDITY]: { low: -3, high: 105, symbol: '%' },
};

export function seriesOf(
  parts: readonly Part[],
  sensor: string,
  column: string,
  timed: boolean,
): { series: Series; leftOut: LeftOut[] } {
  const leftOut: LeftOut[] = [];
  const all = pooled(parts, timed, leftOut);
  const readings = timed ? eachTimeOnce(inOrder(all), leftOut) : all;
  const { quantity, unit } = onlyFirst(parts);
  if (quantity === TEMPERATURE) withoutPowerOn(readings, leftOut);
  const kept = packed(readings);
  const known = {
    sensor,
    column,
    quantity: quantity ?? column,
    unit,
    readings: kept,
    missing: missingOf(parts, kept, timed),
  };
  return { series: { ...known, ...extentOf(kept, timed) }, leftOut };
}

function onlyFirst(parts: readonly Part[]): { quantity: string | null; unit: string | null } {
  const raw = parts[0]?.raw;
  return { quantity: raw?.quantity ?? null, unit: raw ? shownUnit(raw) : null };
}

/** All values of the parts in °C or %, without impossible ones. */
function pooled(parts: readonly Part[], timed: boolean, leftOut: LeftOut[]): Readings {
  const size = parts.reduce((sum, { raw }) => sum + raw.row.length, 0);
  const pool: Readings = { atMs: new Float64Array(size), values: new Float64Array(size), lines: new Uint32Array(size) };
  let count = 0;
  for (const { raw, at, lines } of parts) {
    const possible = POSSIBLE[raw.quantity ?? ''];
    for (let index = 0; index < raw.row.length; index++) {
      const row = raw.row[index] ?? 0;
      const atMs = at[row] ?? NaN;
      const line = lines[row] ?? 0;
      if (timed && Number.isNaN(atMs)) continue;
      const value = possible ? inBenchUnit(raw.value[index] ?? NaN, raw.unit) : (raw.value[index] ?? NaN);
      if (possible && !(value >= possible.low && value <= possible.high)) {
        leftOut.push({
          line,
          why: `${raw.title}: ${+value.toPrecision(6)} ${possible.symbol} is no ${raw.quantity ?? ''} of air`,
        });
        continue;
      }
      pool.atMs[count] = atMs;
      pool.values[count] = value;
      pool.lines[count++] = line;
    }
  }
  return cutTo(pool, count);
}

function inBenchUnit(value: number, unit: Unit | null): number {
  return unit === null ? value : converted(value, unit);
}

function cutTo({ atMs, values, lines }: Readings, count: number): Readings {
  return { atMs: atMs.subarray(0, count), values: values.subarray(0, count), lines: lines.subarray(0, count) };
}

/** By time, then by line. Most files are in order already. */
function inOrder(readings: Readings): Readings {
  const { atMs, values, lines } = readings;
  let sorted = true;
  for (let index = 1; sorted && index < atMs.length; index++) sorted = (atMs[index] ?? 0) >= (atMs[index - 1] ?? 0);
  if (sorted) return readings;
  const order = Uint32Array.from(atMs, (_, index) => index).sort(
    (one, other) => (atMs[one] ?? 0) - (atMs[other] ?? 0) || (lines[one] ?? 0) - (lines[other] ?? 0),
  );
  return {
    atMs: Float64Array.from(order, (index) => atMs[index] ?? NaN),
    values: Float64Array.from(order, (index) => values[index] ?? NaN),
    lines: Uint32Array.from(order, (index) => lines[index] ?? 0),
  };
}

/** The first reading of an instant stands; a later one is left out whether or not it agrees. */
function eachTimeOnce({ atMs, values, lines }: Readings, leftOut: LeftOut[]): Readings {
  let count = 0;
  for (let index = 0; index < atMs.length; index++) {
    const last = count - 1;
    if (count > 0 && atMs[index] === atMs[last]) {
      const agrees = values[index] === values[last];
      leftOut.push({
        line: lines[index] ?? 0,
        why: agrees ? `repeats line ${lines[last] ?? 0}` : `another value at the time of line ${lines[last] ?? 0}`,
      });
      continue;
    }
    atMs[count] = atMs[index] ?? NaN;
    values[count] = values[index] ?? NaN;
    lines[count++] = lines[index] ?? 0;
  }
  return cutTo({ atMs, values, lines }, count);
}

/** How far the neighbours of a power-on value must be from it, so that a warm cupboard keeps its 85 °C. */
const POWER_ON_GAP_C = 25;

function withoutPowerOn({ values, lines }: Readings, leftOut: LeftOut[]): void {
  const original = values.slice();
  for (let index = 0; index < original.length; index++) {
    if (original[index] !== POWER_ON_C) continue;
    const beside = [original[index - 1], original[index + 1]].filter((value) => value !== undefined);
    if (beside.length === 0 || !beside.every((value) => Math.abs(value - POWER_ON_C) > POWER_ON_GAP_C)) continue;
    values[index] = NaN;
    leftOut.push({
      line: lines[index] ?? 0,
      why: '85 °C alone among others is what a thermometer shows before its first measurement',
    });
  }
}

/** Copies of their own size, without the places marked NaN. */
function packed({ atMs, values, lines }: Readings): Readings {
  if (!values.some(Number.isNaN)) return { atMs: atMs.slice(), values: values.slice(), lines: lines.slice() };
  const isKept = (_: number, index: number): boolean => !Number.isNaN(values[index] ?? NaN);
  return { atMs: atMs.filter(isKept), values: values.filter(isKept), lines: lines.filter(isKept) };
}

/** Times without a value; one that another row fills is not missing. */
function missingOf(parts: readonly Part[], { atMs }: Readings, timed: boolean): number {
  const missing = parts.flatMap(({ raw, at }) => raw.missing.map((row) => at[row] ?? NaN));
  if (!timed || missing.length === 0) return missing.length;
  const filled = new Set(atMs);
  return new Set(missing.filter((ms) => !Number.isNaN(ms) && !filled.has(ms))).size;
}

function extentOf({ atMs, values }: Readings, timed: boolean): Pick<Series, 'first' | 'last' | 'min' | 'max' | 'mean'> {
  let [min, max, sum] = [Infinity, -Infinity, 0];
  for (const value of values) {
    if (value < min) min = value;
    if (value > max) max = value;
    sum += value;
  }
  if (values.length === 0) return { first: null, last: null, min: null, max: null, mean: null };
  return {
    first: timed ? (atMs[0] ?? null) : null,
    last: timed ? (atMs.at(-1) ?? null) : null,
    min,
    max,
    mean: sum / values.length,
  };
}
