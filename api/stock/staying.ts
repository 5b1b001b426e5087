// Ways of the events by which nothing leaves: lids, rooms, ovens, balances, solvents, habits.
import { z } from 'zod';
import { conditionedWay } from './conditioned.ts';
import { countBooked, countSaid } from './count.ts';
import type { ContainerKind } from '../database/generated/sqlite/client.ts';
import { habit } from './details.ts';
import { inOvenKept, inOvenSaid } from './in-oven.ts';
import { leastHoodHoursOf } from './hood.ts';
import { directions, frontEdges } from './prepared.ts';
import { said } from './said.ts';
import { baseOf } from './timeline.ts';
import { dryGramsIn } from './water.ts';
import { way } from './way.ts';
import { weighingBooked, weighingSaid } from './weighing.ts';

const nothing = z.object({});

/** Where plates stand afterwards. */
const after = z.object({ roomId: z.string(), closure: said.closure }).optional();
/** Of plates it is said that no solvent is on them: the timeline has to agree. */
const noSolvent = (kind: ContainerKind) => kind === 'PLATE_BOX' && { noSolvent: true as const };

/** What was said, without what was left out. */
function given<T extends Record<string, unknown>>(rest: T): { [K in keyof T]?: NonNullable<T[K]> } {
  const entries = Object.entries(rest).filter(([, value]) => value !== null && value !== undefined);
  return Object.fromEntries(entries) as { [K in keyof T]?: NonNullable<T[K]> };
}

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
    }),
  ),
  EQUILIBRATED: way(
    'EQUILIBRATED',
    z.object({
      humidityPercent: said.percent,
      temperatureC: said.celsius,
      over: said.name.nullish(),
      hours: said.hours.nullish(),
      after,
    }),
    ({ container }, { over, hours, after, ...detail }) => ({
      detail: {
        ...detail,
        ...(over && { over }),
        ...(typeof hours === 'number' && { hours }),
        ...(after && { after }),
        ...noSolvent(container.kind),
      },
    }),
  ),
  WEIGHED: way('WEIGHED', weighingSaid, weighingBooked),
  COUNTED: way('COUNTED', countSaid, countBooked),
  TOUCHED_SOLVENT: way('TOUCHED_SOLVENT', z.object({ what: said.text }), (_, detail) => ({ detail })),
  HABIT_SET: way(
    'HABIT_SET',
    z.object({ habit: habit.nullable().optional(), scooping: said.scooping.optional() }),
    (_, detail) => ({ detail }),
  ),
  PRE_WASHED: way(
    'PRE_WASHED',
    z.object({
      solvent: said.text,
      direction: z.enum(directions, directions.join(' or ')).nullish(),
      fullLength: z.boolean().nullish(),
      frontEdge: z.enum(frontEdges, frontEdges.join(', ')).nullish(),
      isMobilePhase: z.boolean().nullish(),
      tankLoads: z.int('a whole number of loads').min(1, '1 load or more').max(1000, 'at most 1000 loads').nullish(),
      mlPerLoad: said.ml.nullish(),
      tankMinutes: said.minutes.max(1440, 'at most 1440 min').nullish(),
      after,
    }),
    (_, { solvent, ...rest }) => ({ detail: { solvent, ...given(rest) } }),
  ),
  SOLVENT_GONE: way('SOLVENT_GONE', z.object({ seenBy: said.name.nullish() }), async ({ work }, { seenBy }) => {
    const { settings } = await work.tx.lab.findUniqueOrThrow({ where: { id: work.labId } });
    return { detail: { leastHours: leastHoodHoursOf(settings), ...(seenBy && { seenBy }) } };
  }),
  CONDITIONED: conditionedWay,
  INTERRUPTED: way('INTERRUPTED', z.object({ why: said.text }), (_, detail) => ({ detail })),
  NOT_FOUND: way('NOT_FOUND', z.object({ why: said.text }), (_, detail) => ({ detail })),
};
