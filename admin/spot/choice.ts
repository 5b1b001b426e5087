// Which sorbent and compound an address means. Pure.
import type { Reference } from './questions.ts';

export const keyOf = ({
  sorbent,
  compound,
  retention,
}: Pick<Reference, 'sorbent' | 'compound' | 'retention'>): string => [sorbent.name, compound, retention].join('|');

/** The one that is asked for, else the one that was run most. */
export function chosenOf(references: readonly Reference[], key: string | null): Reference | undefined {
  const asked = references.find((one) => keyOf(one) === key);
  return asked ?? [...references].sort((one, other) => other.runs - one.runs)[0];
}
