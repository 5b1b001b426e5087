// A refusal in a person's words, and the field it belongs beside.
import type { Refusal } from '../ask.ts';

/** The last key of the path: "input.containers.0.grams" is about `grams`. */
export const fieldOf = ({ path }: Refusal): string => path.split('.').at(-1) ?? '';

/** What the API said, without the path's scaffolding. */
export function refusalWords({ message, path, expected }: Refusal): string {
  const plain = message.replaceAll('input.', '').trim();
  return path !== '' && expected !== '' && !plain.includes(expected) ? `${plain}: ${expected}` : plain;
}

/** Beside its field: what would be right. */
export const besideField = (refusal: Refusal): string => refusal.expected || refusalWords(refusal);
