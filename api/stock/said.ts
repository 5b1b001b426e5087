// What may be said in an input, with the words of a refusal. GraphQL has checked the types; these check the values.
import { z } from 'zod';
import { closures, scoopings } from './details.ts';

const number = (what: string) => z.number(what).refine(Number.isFinite, what);

export const said = {
  label: z.string('the label on the container, such as 4M7-2XK'),
  name: z.string('a name').trim().min(1, 'a name').max(120, 'at most 120 signs'),
  text: z
    .string()
    .trim()
    .max(2000, 'at most 2000 signs')
    .transform((text) => text || null)
    .nullish()
    .default(null),
  at: z.date('an instant').nullish(),
  clientKey: z.string().min(1, 'a key of your own').max(200, 'at most 200 signs').nullish(),
  grams: number('grams').positive('more than 0 g').max(1e7, 'at most 10000000 g').nullish().default(null),
  gramsOrNone: number('grams').min(0, '0 g or more').max(1e7, 'at most 10000000 g').nullish().default(null),
  plates: z
    .int('a whole number of plates')
    .positive('1 plate or more')
    .max(100_000, 'at most 100000 plates')
    .nullish()
    .default(null),
  platesOrNone: z
    .int('a whole number of plates')
    .min(0, '0 plates or more')
    .max(100_000, 'at most 100000 plates')
    .nullish()
    .default(null),
  basis: z
    .enum(['DRY', 'AS_RECEIVED'], 'DRY or AS_RECEIVED')
    .nullish()
    .transform((basis) => basis ?? 'AS_RECEIVED'),
  closure: z.enum(closures, closures.join(', ')),
  scooping: z.enum(scoopings, scoopings.join(', ')),
  minutes: number('minutes').min(0, '0 min or more').max(1e5, 'at most 100000 min'),
  hours: number('hours').min(0, '0 h or more').max(10_000, 'at most 10000 h'),
  columnVolumes: number('column volumes').min(0, '0 or more').max(1000, 'at most 1000'),
  mm: number('mm').positive('more than 0 mm').max(10_000, 'at most 10000 mm'),
  ml: number('mL').positive('more than 0 mL').max(1e7, 'at most 10000000 mL'),
  celsius: number('°C').min(-90, '-90 °C or more').max(1200, '1200 °C or less'),
  /** Water of the dry mass, or of the whole mass. */
  waterFraction: number('a mass fraction').min(0, '0 or more').max(1, '1 or less: a fraction, 0.05 for 5 %'),
  percent: number('percent').min(0, '0 % or more').max(100, '100 % or less'),
};

/** What every event mutation takes. */
export const eventInput = { label: said.label, at: said.at, note: said.text, clientKey: said.clientKey };
