// What may be said of a need. GraphQL has checked the types; these check the values, and what goes together.
import { z } from 'zod';
import { said } from '../stock/service.ts';

const whole = (what: string) => z.int(`a whole number of ${what}`);
const text = (most: number) => z.string('some words').trim().min(1, 'some words').max(most, `at most ${most} signs`);

export const needFields = {
  kind: z.enum(['PLATES', 'SORBENT', 'COLUMN'], 'PLATES, SORBENT or COLUMN'),
  sorbent: said.name,
  lotNumber: said.name.nullish(),
  campaign: z.string('the id of a campaign').nullish(),
  at: z.date('an instant'),
  room: said.name.nullish(),
  forWhom: text(120),
  note: z.string('words').trim().max(2000, 'at most 2000 signs').nullish(),
  priority: z.literal([1, 2, 4, 8], '1, 2, 4 or 8').nullish(),
  plates: whole('plates').min(1, '1 plate or more').max(2000, 'at most 2000 plates').nullish(),
  backing: z.enum(['GLASS', 'ALUMINIUM', 'PLASTIC'], 'GLASS, ALUMINIUM or PLASTIC').nullish(),
  isForExtraction: z.boolean('true or false').nullish(),
  mobilePhase: text(120).nullish(),
  isPreWashed: z.boolean('true or false').nullish(),
  regime: z.enum(['DRY_UNTIL_SPOTTED', 'EQUILIBRATED'], 'DRY_UNTIL_SPOTTED or EQUILIBRATED').nullish(),
  regimeHumidityPercent: said.percent.nullish(),
  dryGrams: z.number('grams').positive('more than 0 g').max(1e6, 'at most 1000000 g').nullish(),
  limitWaterFraction: said.waterFraction.max(0.5, '0.5 or less: a fraction, 0.05 for 5 %').nullish(),
  diameterMm: said.mm.max(1000, 'at most 1000 mm').nullish(),
  bedLengthMm: said.mm.max(3000, 'at most 3000 mm').nullish(),
  sampleMg: z.number('mg').positive('more than 0 mg').max(1e6, 'at most 1000000 mg').nullish(),
  deltaRf: z.number('a difference of Rf').min(0.1, '0.1 or more').max(1, '1 or less').nullish(),
  columnVolumes: z.number('column volumes').min(1, '1 or more').max(20, 'at most 20').nullish(),
  flowMlPerMin: z.number('mL/min').positive('more than 0 mL/min').max(10_000, 'at most 10000 mL/min').nullish(),
};

const day = z.string('a day such as 2026-11-27').regex(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2026-11-27');

/** On which weekdays it comes again, and until when. */
export const againFields = {
  weekdays: z
    .array(whole('days').min(1, 'Monday 1 to Sunday 7').max(7, 'Monday 1 to Sunday 7'))
    .max(7, 'at most seven days')
    .nullish(),
  untilDay: day.nullish(),
};

export const addNeedSaid = z.object({ ...needFields, ...againFields, clientKey: said.clientKey });
export type NeedSaid = z.output<typeof addNeedSaid>;

const id = z.string('the id of a need');

const { sorbent, at, forWhom, kind: _, ...others } = needFields;

/** What is left out stays; null takes it away, where a need can be without. */
export const setNeedSaid = z.object({
  id,
  ...others,
  sorbent: sorbent.nullish(),
  at: at.nullish(),
  forWhom: forWhom.nullish(),
  clientKey: said.clientKey,
});

export const whichNeedSaid = z.object({ id, clientKey: said.clientKey });

export const dropNeedSaid = z.object({ id, isSeries: z.boolean().nullish(), clientKey: said.clientKey });

export const copyNeedsSaid = z.object({
  fromDay: day,
  toDay: day,
  ids: z.array(id).min(1, 'one need or more').max(200, 'at most 200 needs').nullish(),
  clientKey: said.clientKey,
});

export const needFileSaid = z.object({
  text: z.string('the text of the file').max(1_000_000, 'at most 1000000 signs'),
  format: z.enum(['JSON', 'CSV'], 'JSON or CSV').nullish(),
  clientKey: said.clientKey,
});

export { day as daySaid };
