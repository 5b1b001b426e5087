// Loss on drying from the weighings themselves: what may be told, and what comes of it.
import { z } from 'zod';
import { checked } from '../errors.ts';
import { lossOnDrying, type LossOnDrying } from '../science/weighings.ts';

/** Last digit of the balance when nobody says, g: an analytical one shows 0.1 mg, a bench one 1 mg. */
const usualResolutionG = 0.001;
/** More water than this cannot be, kg per kg dry. */
const mostWaterFraction = 1;
const mostWeighings = 50;

const mass = z.number('grams').min(0, '0 g or more').max(1e6, 'at most 1000000 g');

const weighingsSaid = z.object({
  tareGrams: mass,
  beforeGrams: mass,
  after: z
    .array(z.object({ grossGrams: mass, minutes: z.number('minutes').min(0, '0 min or more').nullish() }))
    .max(mostWeighings, `at most ${mostWeighings} weighings`),
  resolutionGrams: z.number('grams').positive('more than 0 g').nullish(),
});

/** The paths of the weighings, as the query names them. */
const named = (path: string): string => path.replace(/G$/, 'Grams');

/** Walks through the weighings; what cannot be is answered with its field and what would be right. */
export function lossOf(input: unknown): LossOnDrying {
  const { tareGrams, beforeGrams, after, resolutionGrams } = checked(weighingsSaid, input);
  const found = lossOnDrying({
    tareG: tareGrams,
    beforeG: beforeGrams,
    after: after.map(({ grossGrams, minutes }) => ({ grossG: grossGrams, minutes: minutes ?? null })),
    resolutionG: resolutionGrams ?? usualResolutionG,
    mostWaterFraction,
  });
  if (found.kind === 'walked') return found;
  const path = named(found.path);
  return { ...found, path, message: found.message.replace(found.path, path) };
}
