// A count: the book bends to the shelf. Grams on the balance, plates, or the gross weight with a known tare.
import { z } from 'zod';
import { invalid, missing, Refused } from '../errors.ts';
import type { Scene } from './leaving.ts';
import { said } from './said.ts';
import { baseOf } from './timeline.ts';
import { dryGramsIn, waterAt } from './water.ts';
import type { Part } from './way.ts';

export const countSaid = z.object({
  grams: said.gramsOrNone,
  basis: said.basis,
  plates: said.platesOrNone,
  grossGrams: said.gramsOrNone,
  tareGrams: said.gramsOrNone,
});

type Said = z.output<typeof countSaid>;

function netGrams({ container, under }: Scene, { grossGrams, tareGrams }: Said): { grams: number; tare: number } {
  const tare = tareGrams ?? container.tareGrams;
  if (grossGrams === null) throw missing(`${under}.grams`, 'grams, plates or the gross weight');
  if (tare === null)
    throw missing(`${under}.tareGrams`, `the empty weight of ${container.label}, g; it is not known yet`);
  if (grossGrams < tare) throw invalid(`${under}.grossGrams`, grossGrams, `the tare of ${tare} g or more`);
  return { grams: grossGrams - tare, tare };
}

/** What is there by the count, booked dry, beside what the book said. */
export async function countBooked(scene: Scene, count: Said): Promise<Part<'COUNTED'>> {
  const { work, container, at, stand, under } = scene;
  const book = { bookDryGrams: stand?.dryGrams ?? 0, bookPlates: stand?.plates ?? null };
  const given = [count.grams, count.plates, count.grossGrams].filter((each) => each !== null).length;
  if (given > 1) {
    const expected = 'one of grams, plates and grossGrams';
    throw new Refused(`invalid ${under}: more than one count, ${expected}`, under, expected);
  }
  if (container.kind === 'PLATE_BOX') {
    if (count.plates === null)
      throw missing(`${under}.plates`, `the number of plates: ${container.label} is a plate box`);
    const dryGrams = count.plates * (baseOf(container).dryGramsPerPlate ?? 0);
    const none = { grams: null, grossGrams: null, tareGrams: null, bookedWaterFraction: null, waterAssumed: false };
    return { detail: { of: 'PLATES', basis: 'AS_RECEIVED', ...none, dryGrams, plates: count.plates, ...book } };
  }
  const net = count.grams === null ? netGrams(scene, count) : { grams: count.grams, tare: null };
  const dry = count.basis === 'DRY' && count.grams !== null;
  const water = dry ? null : await waterAt(work.tx, container, at);
  return {
    detail: {
      of: count.grams === null ? 'GROSS' : 'GRAMS',
      grams: net.grams,
      basis: dry ? 'DRY' : 'AS_RECEIVED',
      bookedWaterFraction: water?.waterFraction ?? null,
      waterAssumed: water?.assumed ?? false,
      grossGrams: count.grossGrams,
      tareGrams: net.tare,
      dryGrams: water ? dryGramsIn(net.grams, water.waterFraction) : net.grams,
      plates: null,
      ...book,
    },
  };
}
