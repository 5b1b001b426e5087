// Acts on the list of what waits to be dried.
import type { Refusal } from '../ask.ts';
import type { Line } from '../fields.ts';
import { moveAct } from '../dry/acts.ts';
import { recordAct } from './record.svelte.ts';
import { tellAct } from './told.ts';

export interface Wanted {
  why: string;
  dryGrams?: number;
  plates?: number;
  wantedBy?: string;
  /** The recipe it is meant for. */
  temperatureC?: number;
  minutes?: number;
  depthMm?: number;
  /** 1, 2, 4 or 8, as chosen. */
  priority?: string;
}

export const requestDrying = (of: Line, wanted: Wanted, key: string): Promise<Refusal | null> => {
  const { label } = of;
  const { priority, ...rest } = wanted;
  const input = { label, ...rest, ...(priority ? { priority: Number(priority) } : {}) };
  return recordAct({ act: 'requestDrying', label, input, words: 'Waits to be dried' }, key);
};

/** Puts a request before another; null puts it last. */
export async function moveRequest(id: string, before: string | null): Promise<Refusal | null> {
  return (await tellAct(moveAct, { id, before })).refused;
}
