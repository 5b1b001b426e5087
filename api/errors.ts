// A refusal: something asked for that cannot be done, said with what is wrong, where, and what would be right.
import type { z } from 'zod';

/** One of several things that are wrong with a list of lines. */
export interface Problem {
  line: number | null;
  column: string | null;
  value: string;
  message: string;
  expected: string;
}

/** Thrown by rules and services, answered as the `Refusal` member of a mutation's union. */
export class Refused extends Error {
  /** Where in the input, as keys joined by dots ("input.grams"); empty when it is the whole. */
  readonly path: string;
  /** What would be right, as a person would say it. */
  readonly expected: string;
  /** Everything that is wrong, where what was given has lines; else empty. */
  readonly problems: readonly Problem[];

  constructor(message: string, path: string, expected: string, problems: readonly Problem[] = []) {
    super(message);
    this.problems = problems;
    this.name = 'Refused';
    this.path = path;
    this.expected = expected;
  }
}

const shown = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));

/** `invalid x: v, …` */
export const invalid = (path: string, value: unknown, expected: string): Refused =>
  new Refused(`invalid ${path}: ${shown(value)}, ${expected}`, path, expected);

/** `unknown x: v, …` */
export const unknown = (path: string, value: unknown, expected: string): Refused =>
  new Refused(`unknown ${path}: ${shown(value)}, ${expected}`, path, expected);

/** `missing x, …` */
export const missing = (path: string, expected: string): Refused =>
  new Refused(`missing ${path}, ${expected}`, path, expected);

function valueAt(input: unknown, path: PropertyKey[]): unknown {
  return path.reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown> | null | undefined)?.[key], input);
}

/**
 * The input as its schema reads it. Refuses with the first thing that is wrong.
 * `under` names the input in the path ("input"); nothing for the arguments of a query.
 */
export function checked<S extends z.ZodType>(schema: S, input: unknown, under = 'input'): z.output<S> {
  const read = schema.safeParse(input);
  if (read.success) return read.data;
  const issue = read.error.issues[0];
  const keys = issue?.path ?? [];
  const path = [...(under ? [under] : []), ...keys.map(String)].join('.');
  const value = valueAt(input, keys);
  const expected = issue?.message ?? 'something else';
  if (value === undefined || value === null) throw missing(path, expected);
  throw invalid(path, value, expected);
}
