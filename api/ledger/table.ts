// The ledger as a table: a row a week and lot, a row a lot, or a row an event; as CSV or JSON.
import { stringify } from 'csv-stringify/sync';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { checked } from '../errors.ts';
import {
  asReceivedPerDry,
  keyOf,
  ledgerKinds,
  ledgerSaid,
  stockFigures,
  stocksMeant,
  stockWeeks,
  weekFigures,
  withSums,
} from './ledger.ts';
import type { Stock } from './ledger.ts';
import { ordered } from './order.ts';
import type { Figures, Place } from './rules.ts';

const rowsBy = ['week', 'lot', 'event'] as const;
const placeWords = { shelf: 'SHELF', 'taken-out': 'TAKEN_OUT', whole: 'WHOLE' } as const;
const placeNames = Object.keys(placeWords) as (keyof typeof placeWords)[];

const tableSaid = z.object({
  by: z.enum(rowsBy, 'week, lot or event').default('week'),
  place: z.enum(placeNames, placeNames.join(', ')).default('shelf'),
});

type Cell = string | number | null;
export type Row = Record<string, Cell>;

/** What rounding leaves behind the ninth decimal of a gram is no figure. */
const rounded = (amount: number): number => Number(amount.toFixed(9));

const rowOf = (stock: Stock, told: Row, figures: Figures, perDry: number | null): Row => ({
  ...{ sorbent: stock.sorbent, lot: stock.lotNumber, unit: stock.isPlates ? 'plates' : 'dry g', ...told },
  ...Object.fromEntries(Object.entries(figures).map(([name, amount]) => [name, rounded(amount as number)])),
  asReceivedPerDry: perDry === null ? null : rounded(perDry),
});

async function figureRows(stock: Stock, by: 'week' | 'lot', place: Place): Promise<Row[]> {
  const perDry = await asReceivedPerDry(stock);
  if (by === 'lot') return [rowOf(stock, {}, await stockFigures(stock, place), perDry)];
  return (await stockWeeks(stock)).map((week) => rowOf(stock, { week: week.week }, weekFigures(week, place), perDry));
}

/** A row an event, lot by lot: all lots in two statements. */
async function eventRows({ database: { read } }: Context, stocks: readonly Stock[], place: Place): Promise<Row[]> {
  const lotId = { in: [...new Set(stocks.map((stock) => stock.lotId))] };
  const { from, until } = stocks[0] ?? { from: null, until: null };
  const lines = await read.ledgerLine.findMany({
    where: {
      ...{ lotId, week: { ...(from && { gte: from }), ...(until && { lt: until }) } },
      ...(place !== 'WHOLE' && { isStock: place === 'SHELF' }),
    },
    orderBy: [{ at: 'asc' }, { eventId: 'asc' }, { containerId: 'asc' }, { part: 'asc' }],
  });
  const containers = await read.container.findMany({ where: { lotId }, select: { id: true, label: true } });
  const labels = new Map(containers.map(({ id, label }) => [id, label]));
  const rows = new Map(stocks.map((stock) => [keyOf(stock), { stock, own: [] as Row[] }]));
  for (const line of lines) {
    const of = rows.get(keyOf(line));
    if (!of) continue;
    const { containerId, eventId, at, week, account, dryGrams, plates, why } = line;
    const { sorbent, lotNumber } = of.stock;
    of.own.push({
      ...{ sorbent, lot: lotNumber, week, at: at.toISOString(), container: labels.get(containerId) ?? '' },
      ...{ account, dryGrams: rounded(dryGrams), plates, why, event: eventId },
    });
  }
  return [...rows.values()].flatMap(({ own }) => own);
}

/** The table that an address asks for: item, lot, kind, from, until, by and place. */
export async function ledgerTable(context: Context, asked: URLSearchParams): Promise<Row[]> {
  const given = Object.fromEntries([...asked].filter(([, value]) => value !== ''));
  const { by, place } = checked(tableSaid, given, '');
  const kind = given['kind']?.toUpperCase();
  const said = checked(
    ledgerSaid,
    { ...given, ...(kind && { kind: ledgerKinds.find((one) => one === kind) ?? kind }) },
    '',
  );
  const stocks = withSums(context, said, ordered(await stocksMeant(context, said)));
  if (by === 'event') return eventRows(context, stocks, placeWords[place]);
  return (await Promise.all(stocks.map((stock) => figureRows(stock, by, placeWords[place])))).flat();
}

/** As CSV with a heading; what would begin a formula in a spreadsheet is kept from doing so. */
export const csvOf = (rows: readonly Row[]): string => stringify([...rows], { header: true, escape_formulas: true });
