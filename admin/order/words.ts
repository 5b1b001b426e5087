// Ordering in words: days as one says them, amounts in an item's unit, chances, what a campaign takes.
import { grams, plates } from '../say/water.ts';
import { count } from '../say/words.ts';
import type { Campaign, Item, Order } from './questions.ts';

/** "12 March", with its year when it is another one. */
export function dayWords(day: string, today: string): string {
  const options = { day: 'numeric', month: 'long', timeZone: 'UTC' } as const;
  const isOther = day.slice(0, 4) !== today.slice(0, 4);
  return new Intl.DateTimeFormat('en-GB', { ...options, ...(isOther && { year: 'numeric' }) }).format(
    new Date(`${day}T00:00:00Z`),
  );
}

/** Dry grams, or plates, of an item. */
export const amountOf = (amount: number, of: Pick<Item, 'unit'>): string =>
  of.unit === 'PLATES' ? plates(Math.floor(amount)) : grams(amount);

/** What a week uses, also where that is less than a whole plate. */
export const weeklyWords = (amount: number, of: Pick<Item, 'unit'>): string =>
  of.unit === 'PLATES' ? `about ${Number(amount.toPrecision(2))} plates` : grams(amount);

/** A chance as a person takes it: never surer than it is. */
export function chanceWords(chance: number): string {
  if (chance >= 0.995) return 'almost certainly';
  if (chance < 0.005) return 'almost certainly not';
  return `a chance of ${Math.round(100 * chance)}\u00a0%`;
}

/** "2 things to order this week; 1 is late." */
export function weekSummary(due: number, orders: readonly Pick<Order, 'state' | 'isLate'>[]): string {
  const late = orders.filter(({ isLate }) => isLate).length;
  const asked = orders.filter(({ state }) => state === 'ASKED_FOR').length;
  const coming = orders.filter(({ state }) => state === 'BOUGHT').length;
  const parts = [
    due === 0 ? 'Nothing to order this week' : `${count(due, 'thing')} to order this week`,
    asked > 0 ? `${asked} asked for` : null,
    coming > 0 ? `${coming} on the way${late > 0 ? `, ${late} late` : ''}` : null,
  ];
  return `${parts.filter((part) => part !== null).join('; ')}.`;
}

interface Costed {
  spend: { text: string };
  saves: { minor: string; text: string };
}

/**
 * What a plan asks for: what is to be paid. Its whole cost counts what is left at the end as well, may lie below
 * nothing, and is a figure to compare plans by, not one to be told.
 */
export function planWords({ spend, saves }: Costed): string {
  const than = 'ordering at reorder points';
  const better = Number(saves.minor) > 0 ? `all counted, ${saves.text} better than ${than}` : `no better than ${than}`;
  return `${spend.text} to be paid; ${better}.`;
}

/** A plan that is only supposed, beside the one that counts. */
export function supposedWords(
  supposed: { spend: { text: string }; cost: { minor: string } },
  plan: { spend: { text: string }; cost: { minor: string } },
): string {
  const more = Number(supposed.cost.minor) - Number(plan.cost.minor);
  const all = more === 0 ? 'the same' : more > 0 ? 'worse' : 'better';
  return `${supposed.spend.text} to be paid, against ${plan.spend.text}; all counted it comes out ${all}. Nothing is ordered by it.`;
}

/** What a campaign takes: "8 × 250 g, 12 March to 4 May". */
export function usesWords({ uses, backing }: Pick<Campaign, 'uses' | 'backing'>, today: string): string {
  const unit = { unit: backing === null ? 'GRAMS' : 'PLATES' } as const;
  const [first] = uses;
  const last = uses.at(-1);
  if (!first || !last) return 'nothing';
  const isEven = uses.every(({ amount }) => amount === first.amount);
  const total = uses.reduce((sum, { amount }) => sum + amount, 0);
  const much = uses.length > 1 && isEven ? `${uses.length} × ${amountOf(first.amount, unit)}` : amountOf(total, unit);
  const when =
    first.day === last.day
      ? `on ${dayWords(first.day, today)}`
      : `${dayWords(first.day, today)} to ${dayWords(last.day, today)}`;
  return `${much}${unit.unit === 'GRAMS' ? ' dry' : ''}, ${when}`;
}

/** Days so many weeks apart. */
export function daysFrom(first: string, uses: number, everyWeeks: number): string[] {
  return Array.from({ length: uses }, (_, at) => {
    const day = new Date(`${first}T00:00:00Z`);
    day.setUTCDate(day.getUTCDate() + at * 7 * everyWeeks);
    return day.toISOString().slice(0, 10);
  });
}

/** Price breaks as they are typed: "84.50; from 3: 80; from 8: 76.20". Null where they cannot be read. */
export function pricesRead(text: string): { from: number; price: string }[] | null {
  const parts = text.split(';').map((part) => part.trim());
  const read = parts.map((part, at) => {
    const [, from, price] = /^(?:from\s+(\d+)\s*:\s*)?(\d+(?:[.,]\d+)?)$/i.exec(part) ?? [];
    if (price === undefined || (at === 0) !== (from === undefined || from === '1')) return null;
    return { from: Number(from ?? 1), price: price.replace(',', '.') };
  });
  return read.every((one) => one !== null) ? read : null;
}

/** The same as it is typed. */
export const pricesWords = (prices: readonly { from: number; price: { amount: string } }[]): string =>
  prices.map(({ from, price }) => (from === 1 ? price.amount : `from ${from}: ${price.amount}`)).join('; ');
