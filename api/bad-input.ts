// What is wrong with a file or scenario that was given, as one sentence: `invalid x: v, expected …`, `unknown x: v, …`, `missing x, …`.
import type { z } from 'zod';

/** What the caller gave cannot be worked with; one line says what and where; a command ends with 1. */
export class BadInput extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'BadInput';
  }
}

export type Path = readonly PropertyKey[];

/** One sentence about the first thing that zod found wrong in an input, with the field's path. */
export function refusal(raw: unknown, issues: readonly z.core.$ZodIssue[]): BadInput {
  const { issue, path } = deepest(issues, []);
  const value = valueAt(raw, path);
  if (issue.code === 'unrecognized_keys') {
    const key = issue.keys[0] ?? '';
    return new BadInput(
      `unknown ${pathText([...path, key])}: ${shown(valueAt(raw, [...path, key]))}, expected no such field here`,
    );
  }
  const expected = issue.message.replace(/^Invalid input: expected /, '').replace(/, received .*$/, '');
  if (value === undefined) return new BadInput(`missing ${pathText(path)}, expected ${expected}`);
  const word =
    typeof value === 'string' && (issue.code === 'invalid_value' || issue.code === 'invalid_union')
      ? 'unknown'
      : 'invalid';
  return new BadInput(`${word} ${pathText(path)}: ${shown(value)}, expected ${expected}`);
}

// Of a union that fits nowhere, the branch that got furthest says what is wrong.
function deepest(issues: readonly z.core.$ZodIssue[], within: Path): { issue: z.core.$ZodIssue; path: Path } {
  const [issue] = issues;
  if (!issue) throw new Error('invalid refusal: no issue, expected at least one');
  const path = [...within, ...issue.path];
  if (issue.code !== 'invalid_union') return { issue, path };
  const inner = issue.errors.filter((branch) => branch.length > 0).map((branch) => deepest(branch, path));
  return inner
    .filter((branch) => branch.path.length > path.length || branch.issue.code === 'unrecognized_keys')
    .reduce((best, branch) => (branch.path.length > best.path.length || best.issue === issue ? branch : best), {
      issue,
      path,
    });
}

/** `events[2].at` */
export const pathText = (path: Path): string =>
  path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`),
    '',
  ) || 'input';

export const valueAt = (raw: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    raw,
  );

/** A value as it was given, shortened. */
export function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
