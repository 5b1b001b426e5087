// The daily check as a form: what stands in it at first, and how two numbers become an input. Pure.
import { typedNumber } from '../say/water.ts';
import type { Daily } from './questions.ts';

export interface Two {
  label: string;
  first: string;
  second: string;
  firstRf: string;
  secondRf: string;
}

/** As it was run last: the same box while it is in use, else one of the same kind, and the same two dyes. */
export function usualOf({ dailyChecks, boxes, referenceCompounds }: Daily): Two {
  const [last] = dailyChecks;
  const same = boxes.nodes.find(({ label }) => label === last?.container?.label);
  const alike = boxes.nodes.find(({ sorbent }) => sorbent.name === last?.sorbent.name);
  const box = same ?? alike ?? boxes.nodes[0];
  const ran = last?.spots.map(({ compound }) => compound) ?? [];
  const known = referenceCompounds
    .filter(({ sorbent, retention }) => retention === 'RF' && sorbent.name === box?.sorbent.name)
    .map(({ compound }) => compound);
  const [first = '', second = ''] = [...new Set([...ran, ...known])];
  return { label: box?.label ?? '', first, second, firstRf: '', secondRf: '' };
}

const rfOf = (text: string): number | null => {
  const value = typedNumber(text.trim());
  return value !== null && value >= 0 && value <= 1 ? value : null;
};

export interface Read {
  input: { label: string; spots: { compound: string; value: number }[] };
  /** By field, what would be right. */
  wrong: Partial<Record<keyof Two, string>>;
}

/** One number is enough; what stands without its other half is asked for. */
export function readTwo(two: Two): Read {
  const wrong: Read['wrong'] = {};
  const spots: Read['input']['spots'] = [];
  if (two.label === '') wrong.label = 'the box the plate is from';
  for (const [name, rf] of [
    ['first', 'firstRf'],
    ['second', 'secondRf'],
  ] as const) {
    const compound = two[name].trim();
    const typed = two[rf].trim();
    if (typed === '') {
      if (name === 'first') wrong[rf] = 'the Rf, 0 to 1';
      continue;
    }
    if (compound === '') wrong[name] = 'which dye';
    const value = rfOf(typed);
    if (value === null) wrong[rf] = 'an Rf from 0 to 1, such as 0.42';
    else spots.push({ compound, value });
  }
  return { input: { label: two.label, spots }, wrong };
}

/** "Sudan red 0.41, Sudan yellow 0.60". */
export const spotsWords = (spots: readonly { compound: string; value: number }[]): string =>
  spots.map(({ compound, value }) => `${compound} ${valueWords(value)}`).join(', ');

export const valueWords = (value: number): string => value.toFixed(value < 10 ? 2 : 1);
