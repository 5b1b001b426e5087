// The ledger as a table: a row a week and lot, a row a lot, or a row an event; as CSV or JSON.
import { stringify } from 'csv-stringify/sync';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { checked } from '../errors.ts';
import {
  asReceivedPerDry,
  ledgerKinds,
  ledgerOf,
  ledgerSaid,
  stockFigures,
  stockWeeks,
  weekFigures,
} from './ledger.ts';
import type { Stock } from './ledger.ts';
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

async function eventRows({ database: { read } }: Context, stocks: readonly Stock[], place: Place): Promise<Row[]> {
  const rows: Row[] = [];
  for (const { lotId, isPlates, from, until, sorbent, lotNumber } of stocks) {
    const lines = await read.ledgerLine.findMany({
      where: {
        ...{ lotId, isPlates, week: { ...(from && { gte: from }), ...(until && { lt: until }) } },
        ...(place !== 'WHOLE' && { isStock: place === 'SHELF' }),
      },
      orderBy: [{ at: 'asc' }, { eventId: 'asc' }, { containerId: 'asc' }, { part: 'asc' }],
    });
    const ids = [...new Set(lines.map(({ containerId }) => containerId))];
    const containers = await read.container.findMany({ where: { lotId }, select: { id: true, label: true } });
    const labels = new Map(containers.filter(({ id }) => ids.includes(id)).map(({ id, label }) => [id, label]));
    for (const { containerId, eventId, at, week, account, dryGrams, plates, why } of lines) {
      rows.push({
        ...{ sorbent, lot: lotNumber, week, at: at.toISOString(), container: labels.get(containerId) ?? '' },
        ...{ account, dryGrams: rounded(dryGrams), plates, why, event: eventId },
      });
    }
  }
  return rows;
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
  const stocks = await ledgerOf(context, said);
  if (by === 'event') return eventRows(context, stocks, placeWords[place]);
  return (await Promise.all(stocks.map((stock) => figureRows(stock, by, placeWords[place])))).flat();
}

/** As CSV with a heading; what would begin a formula in a spreadsheet is kept from doing so. */
export const csvOf = (rows: readonly Row[]): string => stringify([...rows], { header: true, escape_formulas: true });
