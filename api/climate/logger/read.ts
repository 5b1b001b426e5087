/**
 * A logger's file, from bytes to series: pure, without clock, database or network. What the file leaves open comes back as
 * questions beside the best reading; what cannot be a reading is left out and named with its line.
 */
import { startMs } from './answers.ts';
import type { Answers, LoggerFile, NotALogger, Question, Table } from './file.ts';
import { gathered } from './gather.ts';
import type { Gathered } from './gather.ts';
import { instantsOf } from './instants.ts';
import { kindOf } from './kind.ts';
import { merged } from './merge.ts';
import type { Timed } from './merge.ts';
import { noDates } from './moment.ts';
import type { Dates } from './moment.ts';
import { dateOrderOf, midnightOf } from './order.ts';
import { questionsOfTime } from './questions.ts';
import { rolesOf } from './roles.ts';
import { tableOf } from './rows.ts';
import { sectionsOf } from './section.ts';
import { quantitiesSettled, unitsSettled } from './settle.ts';
import { textOf } from './text.ts';
import { understoodOf } from './understood.ts';
import { workbookTables } from './workbook.ts';
import { UTC, zoneNamed } from './zone.ts';
import type { Zone } from './zone.ts';

export const EXPECTED = 'readings as text with commas, semicolons or tabs, or as an .xlsx workbook';

/** `answers` must have passed `answerRefused`. */
export async function readLogger(
  bytes: Uint8Array,
  fileName: string,
  answers: Answers,
): Promise<LoggerFile | NotALogger> {
  const kind = kindOf(bytes);
  if (kind.is === 'other') return { is: kind.what, expected: kind.advice ?? EXPECTED };
  if (kind.is === 'text') return readText(bytes, fileName, answers);
  const tables = await workbookTables(bytes);
  if (tables === null) return { is: 'a damaged workbook', expected: EXPECTED };
  return readTables(tables, fileName, answers);
}

/** The same for text alone, without waiting. */
export function readText(bytes: Uint8Array, fileName: string, answers: Answers): LoggerFile | NotALogger {
  const table = tableOf(textOf(bytes));
  return table ? readTables([table], fileName, answers) : { is: 'a text of one column', expected: EXPECTED };
}

export function isLoggerFile(read: LoggerFile | NotALogger): read is LoggerFile {
  return 'series' in read;
}

function readTables(tables: readonly Table[], fileName: string, answers: Answers): LoggerFile | NotALogger {
  const dates = noDates();
  const sections = tables.flatMap(sectionsOf);
  const parts = sections
    .map((section) => gathered(section, rolesOf(section), dates))
    .filter(({ series }) => series.length > 0);
  const raw = parts.flatMap(({ series }) => series);
  const first = parts[0];
  if (first === undefined || raw.every(({ row }) => row.length === 0))
    return { is: emptyKind(tables), expected: EXPECTED };
  const said = parts.map(({ section }) => section.facts.dates).find((order) => order !== null) ?? null;
  const { order, open } = dateOrderOf({
    dates: dates.written,
    said,
    answered: answers.dates ?? null,
    twelveHour: dates.twelveHour,
  });
  const settled = [...quantitiesSettled(raw, fileName, answers), ...unitsSettled(raw, answers)];
  const timed = parts.map((part) => timedPart(part, dates, order, answers));
  const { series, leftOut } = merged(timed, fileName, tables.length > 1);
  const questions: Question[] = [...questionsOfTime(timed, dates, open, answers), ...settled];
  const { clock } = first.section;
  const understood = understoodOf({
    written: first.section.table.written,
    clock,
    series,
    leftOut,
    questions,
    order: dates.written.some((date) => !date.named && !Number.isNaN(midnightOf(date, order))) ? order : null,
    zone: timed.find(usesZone)?.zone.name ?? null,
  });
  return { series, leftOut, questions, understood };
}

function emptyKind(tables: readonly Table[]): string {
  const isWorkbook = tables.some(({ name }) => name !== null);
  const rows = tables.flatMap((table) => table.rows).filter((row) => row.some((cell) => cell !== ''));
  if (rows.length === 0) return 'empty';
  const single = rows.filter((row) => row.filter((cell) => cell !== '').length === 1).length;
  const isColumn = single > rows.length / 2 && rows.length > 2;
  return `${isWorkbook ? 'a workbook' : 'a text'} ${isColumn ? 'of one column' : 'without readings'}`;
}

/** Instants for the rows of a part: from what is written, or counted from a start. */
function timedPart(part: Gathered, dates: Dates, order: Parameters<typeof instantsOf>[2], answers: Answers): Timed {
  const { rows, section } = part;
  const zone = zoneOf(part, answers);
  if (section.clock.kind !== 'none') {
    const instants = instantsOf(rows, dates, order, zone);
    return { ...part, ...instants, zone, leftOut: [...part.leftOut, ...instants.leftOut] };
  }
  const start = answers.start ?? section.facts.start;
  const every = answers.everySeconds ?? section.facts.everySeconds ?? NaN;
  const from = start === null ? NaN : startMs(start, zone);
  return {
    ...part,
    zone,
    at: Float64Array.from(rows.ms, (place) => from + place * every * 1000),
    leftOut: part.leftOut,
    skipped: 0,
  };
}

function zoneOf({ section }: Gathered, answers: Answers): Zone {
  const answered = answers.zone === undefined ? null : zoneNamed(answers.zone);
  return answered ?? section.facts.zone ?? zoneNamed(answers.labZone) ?? UTC;
}

function usesZone({ section, rows, at }: Timed): boolean {
  if (section.clock.kind === 'unix') return false;
  return section.clock.kind === 'none' ? at.some((ms) => !Number.isNaN(ms)) : rows.offset.some(Number.isNaN);
}
