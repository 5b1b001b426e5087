// Acts on the list of what waits to be dried.
import type { Refusal } from '../ask.ts';
import type { Line } from '../fields.ts';
import { moveAct, requestDryingAct, withdrawAct } from '../dry/acts.ts';
import { say } from './record.svelte.ts';
import { tellAct } from './told.ts';

export interface Wanted {
  why: string;
  dryGrams?: number;
  plates?: number;
  wantedBy?: string;
}

export async function requestDrying(of: Line, wanted: Wanted, key: string): Promise<Refusal | null> {
  const { refused } = await tellAct(requestDryingAct, { label: of.label, ...wanted }, key);
  if (!refused) say('Waits to be dried', of.label);
  return refused;
}

export async function withdrawDrying(id: string, label: string): Promise<Refusal | null> {
  const { refused } = await tellAct(withdrawAct, { id });
  if (!refused) say('Off the list', label);
  return refused;
}

/** Puts a request before another; null puts it last. */
export async function moveRequest(id: string, before: string | null): Promise<Refusal | null> {
  return (await tellAct(moveAct, { id, before })).refused;
}
