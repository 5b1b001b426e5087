// Names in a list and the lab's own: the same but for how they are written, or near enough to be offered.
import { distance } from 'fastest-levenshtein';
import { plain } from './fields.ts';

const alike = (name: string): string =>
  name
    .normalize('NFKC')
    .replace(/[‐-―−]/g, '-')
    .replace(/\s*-\s*/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/μ/g, 'µ')
    .trim()
    .toLowerCase();

/** The one of ours that is written so, but for case, spaces and dashes. */
export function sameAs(said: string, ours: readonly string[]): string | null {
  const wanted = alike(said);
  return ours.find((name) => alike(name) === wanted) ?? null;
}

/** 1 for the same, 0 for nothing in common. */
function likeness(one: string, other: string): number {
  const [a, b] = [plain(one), plain(other)];
  const longest = Math.max(a.length, b.length);
  if (longest === 0) return 0;
  const words = a.split(' ').filter((word) => word.length > 1);
  const shared = words.filter((word) => ` ${b} `.includes(` ${word} `)).length / Math.max(1, words.length);
  return Math.max(1 - distance(a.slice(0, 80), b.slice(0, 80)) / Math.min(80, longest), 0.9 * shared);
}

/** Ours that could be meant, the likeliest first. */
export function nearest(said: string, ours: readonly string[], most = 3, least = 0.45): string[] {
  return ours
    .map((name) => ({ name, like: likeness(said, name) }))
    .filter(({ like }) => like >= least)
    .sort((one, other) => other.like - one.like)
    .slice(0, most)
    .map(({ name }) => name);
}
