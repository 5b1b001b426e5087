// Needs from a file, .json or .csv: all of them or none; every problem is told by its line.
import { parse } from 'csv-parse/sync';
import { z } from 'zod';
import type { Context } from '../context.ts';
import { Refused, type Problem } from '../errors.ts';
import { write } from '../work.ts';
import { instantOn } from './hours.ts';
import { checkTime, columnsOf } from './need-columns.ts';
import { needsMade, type NeedsKept } from './need.ts';
import { replanned } from './plan.ts';
import { needFields, type needFileSaid } from './said.ts';

const oneNeed = z.object(needFields);
type Line = { line: number | null; raw: Record<string, unknown> };

const numbers: ReadonlySet<string> = new Set([
  'priority',
  'plates',
  'dryGrams',
  'limitWaterFraction',
  'regimeHumidityPercent',
  'diameterMm',
  'bedLengthMm',
  'sampleMg',
  'deltaRf',
  'columnVolumes',
  'flowMlPerMin',
]);
const truths: ReadonlySet<string> = new Set(['isForExtraction', 'isPreWashed']);
const known: ReadonlySet<string> = new Set(Object.keys(needFields));

/** More in one file are refused. */
const mostNeeds = 500;

const notOne = (text: string, expected: string): Refused =>
  new Refused(`invalid input.text: ${text}, ${expected}`, 'input.text', expected);

function typed(name: string, text: string): unknown {
  if (text === '') return undefined;
  if (numbers.has(name)) return Number.isFinite(Number(text.replace(',', '.'))) ? Number(text.replace(',', '.')) : text;
  if (truths.has(name)) return /^(yes|true|1)$/i.test(text) ? true : /^(no|false|0)$/i.test(text) ? false : text;
  return text;
}

function csvLines(text: string): Line[] {
  const delimiter = [';', '\t', ','].find((sign) => text.split('\n', 1)[0]?.includes(sign)) ?? ',';
  const rows = parse(text, {
    bom: true,
    columns: true,
    delimiter,
    trim: true,
    skip_empty_lines: true,
    info: true,
    relax_column_count: true,
  }) as unknown as {
    record: Record<string, string>;
    info: { lines: number };
  }[];
  return rows.map(({ record, info }) => ({
    line: info.lines,
    raw: Object.fromEntries(Object.entries(record).map(([name, value]) => [name, typed(name, value)])),
  }));
}

function jsonLines(text: string): Line[] {
  const all: unknown = JSON.parse(text);
  if (!Array.isArray(all)) throw notOne('something else', 'a list of needs: [{ "kind": "PLATES", … }]');
  return all.map((raw: unknown, index) => ({
    line: index + 1,
    raw: (typeof raw === 'object' && raw !== null ? raw : { kind: raw }) as Record<string, unknown>,
  }));
}

function linesOf(text: string, format: 'JSON' | 'CSV' | null | undefined): Line[] {
  const isJson = format ? format === 'JSON' : /^\s*[[{]/.test(text);
  try {
    return isJson ? jsonLines(text) : csvLines(text);
  } catch (error) {
    if (error instanceof Refused) throw error;
    throw notOne(
      error instanceof Error ? error.message : 'unreadable',
      isJson ? 'JSON' : 'CSV with a line of headings',
    );
  }
}

/** A wall clock's time is the lab's; with an offset it is an instant. */
function instantIn(value: unknown, timeZone: string): unknown {
  if (typeof value !== 'string') return value;
  const [, day, clock] = /^(\d{4}-\d{2}-\d{2})[ T](\d{2}:\d{2})$/.exec(value) ?? [];
  const at =
    day && clock ? instantOn(day, clock, timeZone) : new Date(/(Z|[+-]\d{2}:\d{2})$/.test(value) ? value : NaN);
  return Number.isNaN(at.getTime()) ? value : at;
}

const shown = (value: unknown): string => {
  if (value === undefined || value === null) return '';
  return (typeof value === 'string' ? value : JSON.stringify(value)).slice(0, 80);
};

/** Adds every need of a file, or none. */
export function needsAdded(context: Context, input: z.output<typeof needFileSaid>): Promise<NeedsKept> {
  const { lab } = context;
  const lines = linesOf(input.text, input.format);
  if (lines.length === 0) throw notOne('no needs', 'one need or more');
  if (lines.length > mostNeeds) throw notOne(`${lines.length} needs`, `at most ${mostNeeds} at once`);
  return write(context, 'addNeeds', input, async (work) => {
    const problems: Problem[] = [];
    const columns: Awaited<ReturnType<typeof columnsOf>>[] = [];
    for (const { line, raw } of lines) {
      const problem = (column: string | null, value: unknown, message: string, expected: string) =>
        problems.push({ line, column, value: shown(value), message, expected });
      const odd = Object.keys(raw).filter((name) => !known.has(name));
      for (const name of odd) problem(name, raw[name], `unknown ${name}`, `one of: ${[...known].join(', ')}`);
      const read = oneNeed.safeParse({ ...raw, at: instantIn(raw['at'], lab.timeZone) });
      for (const { path, message } of read.error?.issues ?? []) {
        const name = String(path[0] ?? '');
        const value = raw[name];
        problem(
          name,
          value,
          value === undefined ? `missing ${name}, ${message}` : `invalid ${name}: ${shown(value)}, ${message}`,
          message,
        );
      }
      if (!read.success || odd.length > 0) continue;
      try {
        checkTime(read.data.at, work.now, 'at');
        columns.push(await columnsOf(work, read.data, lab.timeZone, 'need'));
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        const name = error.path.split('.').at(-1) ?? '';
        problem(name, raw[name], error.message.replaceAll('need.', ''), error.expected);
      }
    }
    if (problems.length > 0) {
      const many = problems.length === 1 ? 'one thing is' : `${problems.length} things are`;
      throw new Refused(
        `invalid input.text: ${many} wrong, nothing was added`,
        'input.text',
        'see the problems by line',
        problems,
      );
    }
    const needIds = await needsMade(work, columns);
    await replanned(work, lab);
    return { needIds, notes: [] };
  });
}
