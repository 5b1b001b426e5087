// What the purchase programme's command takes: items, lots, campaigns, suppliers, offers, storage; checked before anything is planned.
import { z } from 'zod';
import { refusal } from '../../bad-input.ts';
import { consistent } from './consistent.ts';

// Each schema's error is the end of the sentence: "invalid items[0].safety: -3, expected …".
const mostMoney = 1_000_000_000;
const mostUnits = 100_000_000;
const mostMicro = 1e15;
export const mostWeeks = 104;

const whole = (low: number, high: number, expected: string) =>
  z.int({ error: expected }).min(low, { error: expected }).max(high, { error: expected });
const money = whole(0, mostMoney, 'whole minor units, 0 or more');
const units = whole(0, mostUnits, 'whole base units, 0 or more');
const micro = whole(0, mostMicro, 'whole millionths of a minor unit, 0 or more');
const week = whole(1, mostWeeks, 'a week, 1 or more');
const weeks = (low: number) => whole(low, 1000, `whole weeks, ${low} or more`);
const object = <S extends z.core.$ZodLooseShape>(shape: S) => z.strictObject(shape, { error: 'an object' });
const name = z
  .string({ error: 'a name' })
  .min(1, { error: 'a name' })
  .max(200, { error: 'a name of at most 200 characters' });
const list = <S extends z.ZodType>(of: S, expected: string, most: number) =>
  z.array(of, { error: expected }).max(most, { error: `at most ${most} of them` });

const item = object({
  id: name,
  unit: name,
  demand: list(units, 'a list of whole base units, one for each week', mostWeeks),
  safety: units,
  check: object({ cost: money, weeks: weeks(0), sample: units, keep: units, withoutOld: money }),
  holdingMicro: micro,
  wasteMicro: micro,
  shortMicro: micro,
  belowSafetyMicro: micro,
  endValueMicro: micro,
});

const lot = object({
  id: name,
  item: name,
  quantity: units,
  from: week,
  lastWeek: week.nullable(),
  status: z.enum(['accepted', 'in-check', 'rejected'], { error: 'one of accepted, in-check, rejected' }),
});

const campaign = object({
  id: name,
  item: name,
  uses: list(object({ week, quantity: whole(1, mostUnits, 'whole base units, 1 or more') }), 'a list of uses', 500).min(
    1,
    { error: 'at least one use' },
  ),
  uncovered: money,
});

const supplier = object({
  id: name,
  deliveryFee: z.union([money, list(money, 'a fee for each week', mostWeeks)], {
    error: 'whole minor units, or a list of them, one for each week',
  }),
  minOrder: money,
});

const offer = object({
  id: name,
  item: name,
  supplier: name,
  pack: whole(1, mostUnits, 'whole base units, 1 or more'),
  prices: list(
    object({ from: whole(1, 1_000_000, 'whole packs, 1 or more'), price: money }),
    'a list of prices',
    20,
  ).min(1, { error: 'at least one price' }),
  leadWeeks: weeks(0),
  shelfWeeks: weeks(1).nullable(),
  maxPacks: whole(1, 1_000_000, 'whole packs, 1 or more'),
});

const storage = object({
  id: name,
  capacity: whole(0, 1_000_000_000, 'whole volume units, 0 or more'),
  overMicro: micro,
  volume: z.record(z.string(), whole(0, 1_000_000, 'whole volume units, 0 or more'), {
    error: 'volume units of a base unit, by item',
  }),
});

const planOrdersInput = object({
  currency: z.string({ error: 'a currency code' }).regex(/^[A-Z]{3}$/, { error: 'three letters as in EUR' }),
  minorDigits: whole(0, 4, 'a whole number, 0 to 4'),
  weeks: whole(1, mostWeeks, `a whole number of weeks, 1 to ${mostWeeks}`),
  items: list(item, 'a list of items', 400).min(1, { error: 'at least one item' }),
  lots: list(lot, 'a list of lots', 5000),
  campaigns: list(campaign, 'a list of campaigns', 1000),
  suppliers: list(supplier, 'a list of suppliers', 200),
  offers: list(offer, 'a list of offers', 2000),
  storage: list(storage, 'a list of storage groups', 50),
  limits: object({
    seconds: z
      .number({ error: 'seconds above 0' })
      .positive({ error: 'seconds above 0' })
      .max(3600, { error: 'at most 3600 seconds' }),
    gap: z
      .number({ error: 'a share, 0 to 1' })
      .min(0, { error: 'a share, 0 to 1' })
      .max(1, { error: 'a share, 0 to 1' }),
  }),
});

export type PlanOrdersInput = z.infer<typeof planOrdersInput>;

/** What a parsed file asks for; throws one sentence about the first thing that is wrong, with its path. */
export function planOrdersOf(raw: unknown): PlanOrdersInput {
  const parsed = planOrdersInput.superRefine(consistent).safeParse(raw);
  if (!parsed.success) throw refusal(raw, parsed.error.issues);
  return parsed.data;
}
