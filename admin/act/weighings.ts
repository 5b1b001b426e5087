// Masses as they are typed become weighings, and what they come to is said with its arithmetic.
import { percent, typedNumber } from '../say/water.ts';
import type { Loss } from './questions.ts';

export interface TypedWeighings {
  tare: string;
  before: string;
  /** After each time in the oven; the last may be empty still. */
  after: string[];
}

export const noWeighings: TypedWeighings = { tare: '', before: '', after: [''] };

export interface Masses {
  tare: number;
  before: number;
  after: { grossGrams: number }[];
}

/** What is typed, once it is enough to reckon with; null before. */
export function massesOf({ tare, before, after }: TypedWeighings): Masses | null {
  const [empty, full] = [typedNumber(tare), typedNumber(before)];
  const dried = after.map(typedNumber).filter((grossGrams) => grossGrams !== null);
  if (empty === null || full === null || dried.length === 0) return null;
  return { tare: empty, before: full, after: dried.map((grossGrams) => ({ grossGrams })) };
}

/** The masses themselves, to stand beside what was recorded: "Weighed: 20 g empty, 22 g before; 21.97, 21.96 g after." */
export const noteWords = ({ tare, before, after }: Masses): string =>
  `${noteBegins} ${tare} g empty, ${before} g before; ${after.map(({ grossGrams }) => grossGrams).join(', ')} g after.`;
export const noteBegins = 'Weighed:';

/** One more field as soon as the last is filled. */
export const withRoom = (after: readonly string[]): string[] =>
  (after.at(-1) ?? '').trim() === '' ? [...after] : [...after, ''];

/** "(22.0000 − 21.9600) ÷ (21.9600 − 20.0000) = 2.04 % dry basis, 2.00 % as received." */
export function arithmeticWords({ tare, before, after }: Masses, loss: Loss): string {
  const last = after[loss.constantAt ?? after.length - 1];
  if (!last || loss.waterFraction === null || loss.asReceivedFraction === null) return '';
  const gross = String(last.grossGrams);
  const dry = `${percent(loss.waterFraction, 2)} dry basis`;
  return `(${before} − ${gross}) ÷ (${gross} − ${tare}) = ${dry}, ${percent(loss.asReceivedFraction, 2)} as received.`;
}

/** What stands beside each weighing: what it lost since the one before. */
export const stepWords = (loss: Loss, i: number): string => {
  const step = loss.steps[i];
  if (!step) return '';
  const lost = `${step.lostMgPerG.toFixed(step.lostMgPerG < 10 ? 1 : 0)} mg per g less`;
  return step.constant ? `${lost}: constant` : lost;
};

/** The percentage as a field takes it. */
export const percentText = (fraction: number): string => String(Number((100 * fraction).toFixed(3)));

/** Which field an impossible weighing is about: `tare`, `before`, or the place of an `after`. */
export function placeOf(path: string): 'tare' | 'before' | number {
  const after = /^after\.(\d+)/.exec(path)?.[1];
  if (after !== undefined) return Number(after);
  return path.startsWith('before') ? 'before' : 'tare';
}
