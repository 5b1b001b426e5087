// A weighing: water found in a sample, or the whole on the balance with its vessel, held against what the book says is dry.
import { z } from 'zod';
import { invalid, missing } from '../errors.ts';
import type { Scene } from './leaving.ts';
import { said } from './said.ts';
import { dryBasis } from './water.ts';
import type { Part } from './way.ts';

export const weighingMethods = z.enum(
  ['LOSS_ON_DRYING', 'KARL_FISCHER', 'GROSS'],
  'LOSS_ON_DRYING, KARL_FISCHER or GROSS',
);

export const weighingSaid = z.object({
  method: weighingMethods,
  temperatureC: said.celsius.nullish().default(null),
  of: z.enum(['WHOLE', 'SCOOP'], 'WHOLE or SCOOP').nullish(),
  waterFraction: said.waterFraction.max(0.9, '0.9 or less: a fraction, 0.05 for 5 %').nullish().default(null),
  basis: said.basis,
  grossGrams: said.gramsOrNone,
  tareGrams: said.gramsOrNone,
});

/** Lighter than its dry sorbent by more than this, and something was taken that the book does not know. */
const leastShare = 0.9;

function weighedWhole({ container, stand, under }: Scene, said: z.output<typeof weighingSaid>): Part<'WEIGHED'> {
  const { grossGrams, temperatureC } = said;
  const tareGrams = said.tareGrams ?? container.tareGrams;
  if (grossGrams === null) throw missing(`${under}.grossGrams`, 'the weight with the vessel, g');
  if (tareGrams === null) {
    throw missing(`${under}.tareGrams`, `the empty weight of ${container.label}, g; it is not known yet`);
  }
  if (said.of === 'SCOOP') throw invalid(`${under}.of`, 'SCOOP', 'WHOLE: the vessel stands on the balance');
  const dryGrams = stand?.dryGrams ?? 0;
  const net = grossGrams - tareGrams;
  if (!(dryGrams > 0))
    throw invalid(`${under}.grossGrams`, grossGrams, `nothing: ${container.label} is empty by the book`);
  if (net < leastShare * dryGrams) {
    const least = Math.ceil(tareGrams + dryGrams);
    throw invalid(`${under}.grossGrams`, grossGrams, `about ${least} g or more; if less is in it, recordCount first`);
  }
  const waterFraction = Math.max(0, net / dryGrams - 1);
  const gross = { grossGrams, tareGrams };
  return {
    detail: {
      method: 'GROSS',
      temperatureC,
      of: 'WHOLE',
      basis: 'DRY',
      saidWaterFraction: waterFraction,
      waterFraction,
      gross,
    },
  };
}

export function weighingBooked(scene: Scene, said: z.output<typeof weighingSaid>): Part<'WEIGHED'> {
  if (said.method === 'GROSS') return weighedWhole(scene, said);
  const { method, temperatureC, of, waterFraction, basis } = said;
  if (!of) throw missing(`${scene.under}.of`, 'WHOLE or SCOOP');
  if (waterFraction === null)
    throw missing(`${scene.under}.waterFraction`, 'the water found, a fraction: 0.05 for 5 %');
  const dry = basis === 'DRY' ? waterFraction : dryBasis(waterFraction);
  return { detail: { method, temperatureC, of, basis, saidWaterFraction: waterFraction, waterFraction: dry } };
}
