// The lab's rooms and vessels as choices of a form.
import { lab } from '../lab.svelte.ts';
import type { Names } from './spec.ts';

export function namesToChoose(): Names {
  return {
    rooms: (lab.known?.rooms.nodes ?? []).map(({ name }) => ({ value: name, words: name })),
    vessels: (lab.known?.vessels.nodes ?? []).map(({ name }) => ({ value: name, words: name })),
  };
}
