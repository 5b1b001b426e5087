// Lists as they are kept: handed in, read again with answers, and matched as the last one with the same headings was.
import { gunzipSync, gzipSync } from 'node:zlib';
import { z } from 'zod';
import type { StockList } from '../database/generated/sqlite/client.ts';
import { unknown } from '../errors.ts';
import type { Transaction } from '../work.ts';
import { noAnswers, under, type Answers } from './questions.ts';
import type { Known } from './resolve.ts';
import type { Sheets } from './sheet.ts';
import { understand, type Understood } from './understood.ts';

export const packed = (sheets: Sheets): Uint8Array<ArrayBuffer> => new Uint8Array(gzipSync(JSON.stringify(sheets)));
const unpacked = (bytes: Uint8Array): Sheets => JSON.parse(gunzipSync(bytes).toString('utf8')) as Sheets;

export const answersSaid = z
  .object({
    columns: z
      .array(
        z.object({
          column: z.int().min(0).max(200),
          field: z
            .string()
            .nullish()
            .transform((field) => field ?? null),
        }),
      )
      .max(200)
      .nullish()
      .transform((columns) => columns ?? []),
    given: z
      .array(z.object({ question: z.string().max(300), answer: z.string().max(300) }))
      .max(5000)
      .nullish()
      .transform((given) => given ?? []),
  })
  .nullish()
  .transform((answers): Answers => answers ?? noAnswers);

export const receiptSaid = z.object({
  containerIds: z.array(z.string()),
  eventIds: z.array(z.string()),
  notes: z.array(z.string()),
});

type Reader = Pick<Transaction, 'stockList'>;

export async function listOf(reader: Reader, labId: string, id: string, path: string): Promise<StockList> {
  const list = await reader.stockList.findFirst({ where: { id, labId } });
  if (!list) throw unknown(path, id, 'the id of a list that was handed in');
  return list;
}

export interface ReadList {
  understood: Understood;
  /** The answers it was read with: those given, and those remembered. */
  answers: Answers;
  isRemembered: boolean;
}

/** The list read with these answers, and with those that a list of the same headings was booked with before. */
export async function readAgain(reader: Reader, list: StockList, now: Answers, known: Known): Promise<ReadList> {
  const sheets = unpacked(list.sheets);
  const first = understand(sheets, now, known);
  if (first.headings === null) return { understood: first, answers: now, isRemembered: false };
  const where = { labId: list.labId, headings: first.headings, bookedAt: { not: null }, id: { not: list.id } };
  const before = await reader.stockList.findFirst({ where, orderBy: { bookedAt: 'desc' }, select: { answers: true } });
  if (!before?.answers) return { understood: first, answers: now, isRemembered: false };
  const answers = under(answersSaid.parse(before.answers), now);
  return { understood: understand(sheets, answers, known), answers, isRemembered: true };
}
