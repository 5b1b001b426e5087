// Grams and plates that leave a container: said as the balance shows them, booked dry, with the water at that moment.
import type { Container } from '../database/generated/sqlite/client.ts';
import { missing } from '../errors.ts';
import type { Work } from '../work.ts';
import type { Entry, Stand } from './stand.ts';
import { baseOf } from './timeline.ts';
import { dryGramsIn, waterAt } from './water.ts';
import { grams as gramWords } from './words.ts';

/** Where and when something is being booked. */
export interface Scene {
  work: Work;
  container: Container;
  at: Date;
  /** What stands of the timeline, without the event that is being corrected. */
  entries: Entry[];
  /** How the container stood at that instant; null when it was not there. */
  stand: Stand | null;
  /** Where the amounts stand in the input. */
  under: string;
}

export interface SaidAmount {
  grams: number | null;
  basis: 'DRY' | 'AS_RECEIVED';
  plates: number | null;
}

export interface Leaving {
  /** The part of an event's detail that says how it was booked. */
  detail: {
    grams: number | null;
    basis: 'DRY' | 'AS_RECEIVED';
    bookedWaterFraction: number | null;
    waterAssumed: boolean;
  };
  dryGrams: number;
  plates: number | null;
  notes: string[];
}

/**
 * Somebody who pours out all that the screen shows means all of it: a request that exceeds the book
 * by less than its rounding (0.5 %, between 0.05 and 0.5 g) takes what is there.
 */
function roundedToAll(dryGrams: number, there: number): boolean {
  const slack = Math.max(0.05, Math.min(0.5, 0.005 * there));
  return dryGrams > there && dryGrams - there <= slack;
}

function platesLeaving({ container, under }: Scene, plates: number | null): Leaving {
  if (plates === null) throw missing(`${under}.plates`, `the number of plates: ${container.label} is a plate box`);
  const dryGrams = plates * (baseOf(container).dryGramsPerPlate ?? 0);
  const detail = { grams: null, basis: 'AS_RECEIVED', bookedWaterFraction: null, waterAssumed: false } as const;
  return { detail, dryGrams, plates, notes: [] };
}

/** What leaves when so much is said to leave. */
export async function leaving(scene: Scene, { grams, basis, plates }: SaidAmount): Promise<Leaving> {
  const { work, container, at, stand, under } = scene;
  if (container.kind === 'PLATE_BOX') return platesLeaving(scene, plates);
  if (grams === null) throw missing(`${under}.grams`, 'the grams on the balance');
  const water = basis === 'DRY' ? null : await waterAt(work.tx, container, at);
  const notes: string[] = [];
  let dryGrams = water ? dryGramsIn(grams, water.waterFraction) : grams;
  if (stand && roundedToAll(dryGrams, stand.dryGrams)) {
    dryGrams = stand.dryGrams;
    notes.push(`that was all of it: ${gramWords(dryGrams)} (dry)`);
  }
  const waterAssumed = (water?.assumed ?? false) || (stand?.dryGramsAssumed ?? false);
  const bookedWaterFraction = water?.waterFraction ?? null;
  return { detail: { grams, basis, bookedWaterFraction, waterAssumed }, dryGrams, plates: null, notes };
}

/** All that is in it, whatever its amount. */
export async function everything(scene: Scene): Promise<Leaving> {
  const { work, container, at, stand } = scene;
  if (container.kind === 'PLATE_BOX') return platesLeaving(scene, stand?.plates ?? 0);
  const water = await waterAt(work.tx, container, at);
  const detail = {
    grams: null,
    basis: 'AS_RECEIVED',
    bookedWaterFraction: water.waterFraction,
    waterAssumed: water.assumed || (stand?.dryGramsAssumed ?? false),
  } as const;
  return { detail, dryGrams: stand?.dryGrams ?? 0, plates: null, notes: [] };
}
