// What is held of several factors together: where they stand, how sure, and how the doubts about them hang together.
import { Matrix } from 'ml-matrix';
import { valueOf, type Values } from './factors.ts';
import type { Held } from '../history.ts';
import type { Slopes } from './slopes.ts';
import type { Solution } from './solve.ts';

export interface Gaussian {
  readonly names: readonly string[];
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

export const nothingHeld: Held = { has: () => false, covariance: () => 0 };

export const valuesOf = ({ names, mean }: Gaussian): Values => new Map(names.map((name, i) => [name, mean[i] ?? 0]));

export function sdIn({ names, covariance }: Gaussian, name: string): number | null {
  const i = names.indexOf(name);
  return i < 0 ? null : Math.sqrt(covariance[i]?.[i] ?? 0);
}

/**
 * Shared factors with the own ones of the families that `isAsked`. Own factors of two families hang together through the
 * shared ones: C_ll' = G C_ss G'ᵀ.
 */
export function gaussianOf(
  { sharedNames, at, shared, families }: Solution,
  values: Values,
  isAsked: (locals: readonly string[]) => boolean,
): Gaussian {
  const asked = families.filter(({ family }) => family.locals.length > 0 && isAsked(family.locals));
  const names = [...sharedNames, ...asked.flatMap(({ family }) => family.locals)];
  const [s, n] = [sharedNames.length, names.length];
  const to = Matrix.zeros(n, s);
  for (let i = 0; i < s; i++) to.set(i, i, 1);
  let row = s;
  for (const { family, gain } of asked) {
    for (const l of family.locals.keys()) {
      for (const [i, name] of family.shared.entries()) to.set(row, at.get(name) ?? 0, -gain.get(l, i));
      row++;
    }
  }
  const covariance = s > 0 ? to.mmul(shared).mmul(to.transpose()) : Matrix.zeros(n, n);
  row = s;
  for (const { family, own } of asked) {
    const k = family.locals.length;
    for (let l = 0; l < k; l++) {
      for (let m = 0; m < k; m++) covariance.set(row + l, row + m, covariance.get(row + l, row + m) + own.get(l, m));
    }
    row += k;
  }
  return { names, mean: names.map((name) => valueOf(values, name)), covariance: covariance.to2DArray() };
}

/** Asked by name. */
export function heldOf({ names, covariance }: Gaussian): Held {
  const at = new Map(names.map((name, i) => [name, i]));
  return {
    has: (name) => at.has(name),
    covariance: (one, other) => covariance[at.get(one) ?? -1]?.[at.get(other) ?? -1] ?? 0,
  };
}

/** Variance of what has these slopes; factors not held yet stand alone with their prior. */
export function varianceAlong(held: Held, slopes: Slopes): number {
  const known: [string, number][] = [];
  let variance = 0;
  for (const [name, { value, sd }] of slopes) {
    if (held.has(name)) known.push([name, value]);
    else variance += (value * sd) ** 2;
  }
  for (const [one, value] of known)
    for (const [other, beside] of known) variance += value * beside * held.covariance(one, other);
  return Math.max(0, variance);
}
