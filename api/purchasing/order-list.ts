// Orders as a list to hand on: CSV for a table, plain text for a letter to each supplier.
import { stringify } from 'csv-stringify/sync';
import type { Context } from '../context.ts';
import type { OrderState, Prisma } from '../database/generated/sqlite/client.ts';
import { itemName } from './item.ts';
import { packAmount, packsText } from './item-words.ts';
import { amountOf, type Currency, moneyText } from './money.ts';
import { stateWords } from './rules.ts';
import { currencyOf } from './settings.ts';
import { dayOf } from './weeks.ts';

const withAll = { include: { supplier: true, offer: true } } satisfies Prisma.OrderDefaultArgs;
type Row = Prisma.OrderGetPayload<typeof withAll> & { item: string };

const columns = [
  'order',
  'state',
  'supplier',
  'article',
  'item',
  'packs',
  'pack',
  'pack unit',
  'price of a pack',
  'total',
  'currency',
  'lot wished',
  'asked for on',
  'expected on',
  'note',
];

/** One order a line; amounts are decimals with a point. What a spreadsheet would take for a formula is not one. */
function csvOf(rows: readonly Row[], currency: Currency, timeZone: string): string {
  const lines = rows.map((row) => [
    row.number,
    stateWords[row.state],
    row.supplier.name,
    row.offer?.articleNumber ?? '',
    row.item,
    row.packs,
    packAmount(row),
    row.packPlates === null ? 'g' : 'plates',
    amountOf(row.priceMinor, currency),
    amountOf(row.priceMinor * row.packs, currency),
    currency.code,
    row.lotWished ?? '',
    dayOf(row.askedAt, timeZone),
    row.expectedOn ?? '',
    row.note ?? '',
  ]);
  return stringify([columns, ...lines], { escape_formulas: true });
}

/** A line of the letter: what, how many, at what price, of which lot. */
function lineOf(row: Row, currency: Currency): string {
  const article = row.offer?.articleNumber ? ` (your no. ${row.offer.articleNumber})` : '';
  const lot = row.lotWished ? `, of lot ${row.lotWished}` : '';
  const total = moneyText(row.priceMinor * row.packs, currency);
  const note = row.note ? `\n  ${row.note}` : '';
  return `- ${row.item}${article}: ${packsText(row.packs, row)}${lot}, ${moneyText(row.priceMinor, currency)} each, ${total}\n  our order ${row.number}${note}`;
}

/** One part for each supplier, with what it comes to. */
function letterOf(rows: readonly Row[], currency: Currency): string {
  const suppliers = new Map<string, Row[]>();
  for (const row of rows) suppliers.set(row.supplier.name, [...(suppliers.get(row.supplier.name) ?? []), row]);
  return [...suppliers]
    .map(([name, some]) => {
      const goods = some.reduce((sum, { priceMinor, packs }) => sum + priceMinor * packs, 0);
      const fee = some[0]?.supplier.deliveryFeeMinor ?? 0;
      const delivery = fee > 0 ? `Delivery: ${moneyText(fee, currency)}\n` : '';
      const sum = `${delivery}In all: ${moneyText(goods + fee, currency)}`;
      return `To ${name}\n\n${some.map((row) => lineOf(row, currency)).join('\n')}\n\n${sum}\n`;
    })
    .join('\n\n');
}

export async function orderListOf(context: Context, states: readonly OrderState[], supplier: string | null) {
  const { database, lab } = context;
  const rows = await database.read.order.findMany({
    where: { labId: lab.id, state: { in: [...states] } },
    ...withAll,
    orderBy: { number: 'asc' },
  });
  const ids = [...new Set(rows.map(({ sorbentId }) => sorbentId))];
  const sorbents = await database.read.sorbent.findMany({ where: { id: { in: ids } } });
  const nameOf = new Map(sorbents.map(({ id, name }) => [id, name]));
  const named = rows
    .filter((row) => supplier === null || row.supplier.name.toLowerCase() === supplier.toLowerCase())
    .map((row) => ({ ...row, item: itemName(nameOf.get(row.sorbentId) ?? '', row.backing) }));
  const currency = currencyOf(context);
  return { orders: named.length, csv: csvOf(named, currency, lab.timeZone), text: letterOf(named, currency) };
}
