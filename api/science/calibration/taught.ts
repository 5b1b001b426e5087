// What the weighings taught, factor by factor, as it is stored; and back to what is held of all of them together.
import { className, classSd, isLocal, lotName, lotSd, valueOf } from './factors.ts';
import { gaussianOf, type Gaussian } from './gaussian.ts';
import type { Held, SorbentNumbers } from '../history.ts';
import type { Expected } from './expect.ts';
import type { Learned } from './learn.ts';

export interface Taught {
  /**
   * `capacity:<lot>`, `closure:TIGHT` and so on, `container:<key>`, `bed`, `open`: what the estimator reads. Besides them `class:`,
   * `lot:`, `start:`, `receipt:` and `bias`, so that the next weighing can go on from here.
   */
  readonly factor: string;
  readonly lnValue: number;
  readonly lnSd: number;
  readonly because: Because;
}

export interface Because {
  readonly priorLn: number;
  readonly priorSd: number;
  /** Weighings that bear on it, and the first and last of them, s; null where there are none. */
  readonly weighings: number;
  readonly fromS: number | null;
  readonly toS: number | null;
  /** How many more would, but lie beyond four sigmas and wait to be confirmed. */
  readonly leftOut: number;
  /** Correlations with other stored factors: without them ranges would be far too wide (a lid's type against its container). */
  readonly with: Readonly<Record<string, number>>;
}

/** A weighing bears on a factor that moves it by this much of its own sigma. */
const bearing = 0.1;
/** Correlations below this are left unsaid. */
const smallest = 1e-4;

const closures = [
  ['closed:tight', 'closure:TIGHT'],
  ['closed:well closed', 'closure:WELL_CLOSED'],
  ['closed:loosely covered', 'closure:LOOSELY_COVERED'],
] as const;

const storedName = (name: string): string => closures.find(([ours]) => ours === name)?.[1] ?? name;
const ourName = (name: string): string => closures.find(([, stored]) => stored === name)?.[0] ?? name;
const capacityName = (lot: string): string => `capacity:${lot}`;

interface Bearing {
  weighings: number;
  fromS: number | null;
  toS: number | null;
  leftOut: number;
}

const none = (): Bearing => ({ weighings: 0, fromS: null, toS: null, leftOut: 0 });

const bears = ({ noise }: Expected, value: number, sd: number): boolean => Math.abs(value * sd) > bearing * noise;

/** What one weighing says of one factor, all others as they were learned: by how much it wants it moved, and how sure it is. */
export interface Bears {
  /** As stored; a lot's capacity under the lot's own name. */
  readonly factor: string;
  readonly by: number;
  readonly sd: number;
}

/** The factors that a weighing says something of. */
export const bearsOn = (row: Expected): Bears[] =>
  row.unusable !== null
    ? []
    : [...row.slopes].flatMap(([name, { value, sd }]) =>
        bears(row, value, sd)
          ? [{ factor: storedName(name), by: (row.found - row.expected) / value, sd: row.noise / Math.abs(value) }]
          : [],
      );

function bearings({ after, leftOut }: Learned): Map<string, Bearing> {
  const all = new Map<string, Bearing>();
  for (const row of after) {
    if (row.unusable !== null) continue;
    for (const [name, { value, sd }] of row.slopes) {
      const one = all.get(name) ?? none();
      all.set(name, one);
      if (!bears(row, value, sd)) continue;
      const { id, atS } = row.weighing;
      if (leftOut.has(id)) one.leftOut++;
      else {
        one.weighings++;
        one.fromS ??= atS;
        one.toS = atS;
      }
    }
  }
  return all;
}

const correlations = ({ names, covariance }: Gaussian, i: number): Record<string, number> =>
  Object.fromEntries(
    names.flatMap((name, j) => {
      if (i === j) return [];
      const both = Math.sqrt((covariance[i]?.[i] ?? 0) * (covariance[j]?.[j] ?? 0));
      const value = both > 0 ? (covariance[i]?.[j] ?? 0) / both : 0;
      return Math.abs(value) > smallest ? [[storedName(name), value] as const] : [];
    }),
  );

/** Of a lot, as much as learning from its class takes. */
export interface OfLot {
  readonly lot: string;
  readonly pool: string;
  readonly input: { readonly spec: { readonly sorbent: Pick<SorbentNumbers, 'doubt'> } };
}

/** All that is to be stored; lots of `containers` that nobody weighed learn from their class. */
export function taught(learned: Learned, containers: readonly OfLot[]): Taught[] {
  const { solution, values, priors } = learned;
  const bore = bearings(learned);
  const rows: Taught[] = [];
  const add = (held: Gaussian, i: number): void => {
    const name = held.names[i] ?? '';
    const because = {
      priorLn: 0,
      priorSd: priors.get(name) ?? NaN,
      ...(bore.get(name) ?? none()),
      with: correlations(held, i),
    };
    const lnSd = Math.sqrt(held.covariance[i]?.[i] ?? NaN);
    rows.push({ factor: storedName(name), lnValue: valueOf(values, name), lnSd, because });
  };
  const shared = gaussianOf(solution, values, () => false);
  for (const i of shared.names.keys()) add(shared, i);
  for (const { family } of solution.families) {
    if (family.locals.length === 0) continue;
    const held = gaussianOf(solution, values, (locals) => locals === family.locals);
    for (const [i, name] of held.names.entries()) if (isLocal(name)) add(held, i);
  }
  const lots = new Map(containers.map((weighed) => [weighed.lot, weighed]));
  for (const [lot, weighed] of lots) {
    const capacity = capacityOf(shared, weighed);
    if (!capacity) continue;
    const name = lotName(lot);
    const priorSd = weighed.input.spec.sorbent.doubt.below;
    const because = { priorLn: 0, priorSd, ...(bore.get(name) ?? none()), with: {} };
    rows.push({ factor: capacityName(lot), ...capacity, because });
  }
  return rows;
}

// Class and lot together; null where the class was never weighed.
function capacityOf(held: Gaussian, { pool, lot, input }: OfLot): { lnValue: number; lnSd: number } | null {
  const { doubt } = input.spec.sorbent;
  const [c, l] = [held.names.indexOf(className(pool)), held.names.indexOf(lotName(lot))];
  if (c < 0) return null;
  const at = (i: number, j: number): number => held.covariance[i]?.[j] ?? 0;
  const ofLot = l < 0 ? lotSd(doubt) ** 2 : at(l, l) + 2 * at(c, l);
  return {
    lnValue: (held.mean[c] ?? 0) + (held.mean[l] ?? 0),
    lnSd: Math.min(Math.hypot(classSd(doubt), lotSd(doubt)), Math.sqrt(at(c, c) + ofLot)),
  };
}

/** The same asked by name, so that nobody makes a table of all of them. */
export function rememberedNames(stored: readonly Taught[]): { values: Map<string, number>; held: Held } {
  const rows = new Map(
    stored.filter(({ factor }) => !factor.startsWith('capacity:')).map((row) => [ourName(row.factor), row]),
  );
  return {
    values: new Map([...rows].map(([name, { lnValue }]) => [name, lnValue])),
    held: {
      has: (name) => rows.has(name),
      covariance: (one, other) => {
        const [row, beside] = [rows.get(one), rows.get(other)];
        if (!row || !beside) return 0;
        if (row === beside) return row.lnSd ** 2;
        const together = row.because.with[beside.factor] ?? beside.because.with[row.factor] ?? 0;
        return row.lnSd * beside.lnSd * together;
      },
    },
  };
}

/** Stored factors of one fit together again: those of one container (and of what it was filled from) and the shared ones. */
export function remembered(stored: readonly Taught[]): Gaussian {
  const rows = stored.filter(({ factor }) => !factor.startsWith('capacity:'));
  return {
    names: rows.map(({ factor }) => ourName(factor)),
    mean: rows.map(({ lnValue }) => lnValue),
    covariance: rows.map((one, i) =>
      rows.map((other, j) =>
        i === j
          ? one.lnSd ** 2
          : one.lnSd * other.lnSd * (one.because.with[other.factor] ?? other.because.with[one.factor] ?? 0),
      ),
    ),
  };
}
