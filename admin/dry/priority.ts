// How much a request counts in the plan of the ovens, in words: a minute late counts so many times.
import type { Choice } from '../act/field.ts';

export const priorities: readonly Choice[] = [
  { value: '1', words: 'can wait' },
  { value: '2', words: 'usual' },
  { value: '4', words: 'soon' },
  { value: '8', words: 'first' },
];

/** "soon"; a weight that is none of the four is said as it is. */
export const priorityWord = (priority: number): string =>
  priorities.find(({ value }) => value === String(priority))?.words ?? `counts ${priority} times`;
