// What the lab sets for buying: its currency, how far a plan looks, how sure it should be. All of it has a default.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing } from '../errors.ts';
import { partAfter, partRead, settingsWritten } from '../lab-settings.ts';
import { said } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { type Currency, currencyNamed, minorSaid } from './money.ts';

const share = (what: string) => z.number(what).min(0, '0 or more').max(1, '1 or less');

const choices = {
  weeks: z.int('weeks').min(26, '26 weeks or more').max(52, 'at most 52 weeks'),
  serviceLevel: share('a share of lead times').min(0.5, '0.5 or more').max(0.999, '0.999 or less'),
  holdingPercentAYear: said.percent,
  checkWeeks: z.int('whole weeks').min(0, '0 or more').max(12, 'at most 12'),
  checkGrams: z.number('grams').min(0, '0 g or more').max(100_000, 'at most 100000 g'),
  checkPlates: z.int('plates').min(0, '0 or more').max(1000, 'at most 1000'),
  redryLossFraction: share('a mass fraction').max(0.5, '0.5 or less: a fraction, 0.01 for 1 %'),
  shortTimesPrice: z.number('a number').min(1, '1 or more').max(1000, 'at most 1000'),
  seconds: z.number('seconds').min(1, '1 s or more').max(120, 'at most 120 s'),
};

export interface PurchaseSettings {
  currency: Currency;
  /** How far a plan looks. */
  weeks: number;
  /** The share of lead times that should not run out. */
  serviceLevel: number;
  /** What goods cost while they stand there, % of their price a year. */
  holdingPercentAYear: number;
  /** Checking a new lot: weeks, what it costs, what it uses up. */
  checkWeeks: number;
  checkMinor: number;
  checkGrams: number;
  checkPlates: number;
  /** What one drying loses on trays and scoops. */
  redryLossFraction: number;
  /** What running out costs, in prices of what is missing. */
  shortTimesPrice: number;
  seconds: number;
}

/** Invented defaults, and shown as such. */
const usual: PurchaseSettings = {
  currency: { code: 'EUR', minorDigits: 2 },
  weeks: 39,
  serviceLevel: 0.95,
  holdingPercentAYear: 10,
  checkWeeks: 1,
  checkMinor: 9000,
  checkGrams: 50,
  checkPlates: 8,
  redryLossFraction: 0.01,
  shortTimesPrice: 5,
  seconds: 10,
};

const stored = {
  ...choices,
  currency: z.object({ code: z.string(), minorDigits: z.int().min(0).max(4) }),
  checkMinor: z.int().min(0),
};

/** What counts now, and which of it the lab has set itself. */
export function purchaseSettingsOf(settings: unknown): PurchaseSettings & { own: string[] } {
  const given = partRead(settings, 'purchasing', stored);
  return { ...usual, ...given, own: Object.keys(given) };
}

export const currencyOf = ({ lab }: Pick<Context, 'lab'>): Currency => purchaseSettingsOf(lab.settings).currency;

const nullish = Object.fromEntries(Object.entries(choices).map(([key, kind]) => [key, kind.nullish()])) as {
  [K in keyof typeof choices]: z.ZodOptional<z.ZodNullable<(typeof choices)[K]>>;
};

export const purchaseSettingsSaid = z.object({
  ...nullish,
  currency: z.string('the three letters of a currency').nullish(),
  checkCost: z.string('an amount').nullish(),
  clientKey: said.clientKey,
});

/** Where amounts are written down already, in words: they would be other amounts in another currency. */
async function amountsWritten({ tx, labId }: Work): Promise<string[]> {
  const set = (...fields: string[]) => ({ labId, OR: fields.map((field) => ({ [field]: { not: null } })) });
  const [offers, orders, suppliers, storage, items, campaigns] = await Promise.all([
    tx.offer.count({ where: { labId } }),
    tx.order.count({ where: { labId } }),
    tx.supplier.count({ where: { labId, OR: [{ deliveryFeeMinor: { gt: 0 } }, { minOrderMinor: { gt: 0 } }] } }),
    tx.storageGroup.count({ where: { labId, overMinor: { gt: 0 } } }),
    tx.boughtItem.count({ where: set('checkMinor', 'checkWithoutMinor') }),
    tx.campaign.count({ where: set('uncoveredMinor') }),
  ]);
  const some: [number, string][] = [
    [offers, 'offers'],
    [orders, 'orders'],
    [suppliers, 'suppliers’ terms'],
    [storage, 'costs of storage'],
    [items, 'costs of checks'],
    [campaigns, 'costs of campaigns'],
  ];
  return some.flatMap(([count, words]) => (count > 0 ? [words] : []));
}

/** Writes the lab's choices; what is null goes back to its default. Amounts that are there keep their currency. */
export function purchaseSettingsSet(
  context: Context,
  input: z.output<typeof purchaseSettingsSaid>,
): Promise<{ labId: string }> {
  return settingsWritten(context, 'setPurchasing', input, async (before, work) => {
    const { clientKey: _, currency, checkCost, ...rest } = input;
    if (Object.values({ ...rest, currency, checkCost }).every((value) => value === undefined))
      throw missing('input', 'what the lab sets');
    const now = purchaseSettingsOf(before).currency;
    const wanted =
      currency === undefined ? now : currency === null ? usual.currency : currencyNamed(currency, 'input.currency');
    const isOther = wanted.code !== now.code;
    const written = isOther ? await amountsWritten(work) : [];
    if (written.length > 0)
      throw invalid(
        'input.currency',
        wanted.code,
        `${now.code}: there are ${written.join(', ')} in it; they would be other amounts`,
      );
    // A cost of before was of another currency: it goes back to the default unless it is told anew.
    const checkMinor = minorSaid(isOther && checkCost === undefined ? null : checkCost, wanted, 'input.checkCost');
    return partAfter(before, 'purchasing', { ...rest, currency: currency && wanted, checkMinor });
  });
}
