// Ways of the events by which nothing leaves: lids, rooms, ovens, balances, solvents, habits.
import { z } from 'zod';
import { countBooked, countSaid } from './count.ts';
import { habit } from './details.ts';
import { said } from './said.ts';
import { inOvenKept, inOvenSaid } from './in-oven.ts';
import { leastHoodHoursOf } from './hood.ts';
import { directions, frontEdges } from './prepared.ts';
import { baseOf } from './timeline.ts';
import { dryBasis, dryGramsIn } from './water.ts';
import { way } from './way.ts';

const nothing = z.object({});

export const staying = {
  CAME_IN: way(
    'CAME_IN',
    z.object({
      grams: said.grams,
      basis: said.basis,
      plates: said.plates,
      roomId: z.string(),
      closure: said.closure,
      startWaterFraction: said.waterFraction.nullable(),
      startWaterFrom: z.enum(['GIVEN', 'CERTIFICATE', 'NOWHERE']),
      bookedWaterFraction: said.waterFraction,
    }),
    ({ container }, { plates, ...what }) => {
      const bookedWaterFraction = what.startWaterFraction ?? what.bookedWaterFraction;
      if (container.kind === 'PLATE_BOX') {
        const dryGrams = (plates ?? 0) * (baseOf(container).dryGramsPerPlate ?? 0);
        return { detail: { ...what, bookedWaterFraction, waterAssumed: false }, dryGrams, plates };
      }
      const given = what.grams ?? 0;
      const dryGrams = what.basis === 'DRY' ? given : dryGramsIn(given, bookedWaterFraction);
      const waterAssumed = what.startWaterFraction === null && what.basis === 'AS_RECEIVED';
      return { detail: { ...what, bookedWaterFraction, waterAssumed }, dryGrams };
    },
  ),
  OPENED: way('OPENED', nothing, () => ({ detail: {} })),
  CLOSED: way('CLOSED', z.object({ closure: said.closure }), (_, detail) => ({ detail })),
  MOVED: way('MOVED', z.object({ roomId: z.string() }), (_, detail) => ({ detail })),
  MIXED: way('MIXED', nothing, () => ({ detail: {} })),
  DRIED: way(
    'DRIED',
    z.object({
      temperatureC: said.celsius.nullish().default(null),
      minutes: said.minutes.nullish().default(null),
      vacuum: z
        .boolean()
        .nullish()
        .transform((vacuum) => vacuum ?? false),
      waterFraction: said.waterFraction.nullish().default(null),
    }),
    (_, detail) => ({ detail }),
  ),
  EQUILIBRATED: way(
    'EQUILIBRATED',
    z.object({ humidityPercent: said.percent, temperatureC: said.celsius }),
    (_, detail) => ({ detail }),
  ),
  WEIGHED: way(
    'WEIGHED',
    z.object({
      method: z.enum(['LOSS_ON_DRYING', 'KARL_FISCHER'], 'LOSS_ON_DRYING or KARL_FISCHER'),
      oven: said.name.nullish(),
      ...inOvenSaid,
      after,
    }),
    ({ container }, { oven, after, temperatureC, minutes, vacuum, waterFraction, ...inOven }) => ({
      detail: {
        ...{ temperatureC, minutes, vacuum, waterFraction },
        ...inOvenKept(inOven),
        ...(oven && { oven }),
        ...(after && { after }),
        ...noSolvent(container.kind),
      },
      temperatureC: said.celsius.nullish().default(null),
      of: z.enum(['WHOLE', 'SCOOP'], 'WHOLE or SCOOP'),
      waterFraction: said.waterFraction.max(0.9, '0.9 or less: a fraction, 0.05 for 5 %'),
      basis: said.basis,
    }),
    (_, { waterFraction, ...what }) => ({
      detail: {
        ...what,
        saidWaterFraction: waterFraction,
        waterFraction: what.basis === 'DRY' ? waterFraction : dryBasis(waterFraction),
      },
    }),
  ),
  COUNTED: way('COUNTED', countSaid, countBooked),
  TOUCHED_SOLVENT: way('TOUCHED_SOLVENT', z.object({ what: said.text }), (_, detail) => ({ detail })),
  HABIT_SET: way(
    'HABIT_SET',
    z.object({ habit: habit.nullable().optional(), scooping: said.scooping.optional() }),
    (_, detail) => ({ detail }),
  ),
  PRE_WASHED: way('PRE_WASHED', z.object({ solvent: said.text }), (_, detail) => ({ detail })),
  SOLVENT_GONE: way('SOLVENT_GONE', nothing, () => ({ detail: {} })),
  CONDITIONED: way(
    'CONDITIONED',
    z.object({ mobilePhase: said.text, columnVolumes: z.number().min(0, '0 or more').nullish().default(null) }),
    (_, detail) => ({ detail }),
  ),
  INTERRUPTED: way('INTERRUPTED', z.object({ why: said.text }), (_, detail) => ({ detail })),
  NOT_FOUND: way('NOT_FOUND', z.object({ why: said.text }), (_, detail) => ({ detail })),
};
