// A logger's file as read, without its readings: what a person is shown before it is imported.
import type { LeftOut, LoggerFile, Question } from './logger/file.ts';
import { loggerJson, type LoggerJson } from './logger/json.ts';

/** Lines named one by one; the rest are counted. */
const namedLines = 200;
/** Rows shown of each series. */
const shownRows = 8;

export type SeriesUnderstood = LoggerJson['series'][number] & {
  /** The first readings, °C or %, for a person to compare with the file. */
  firstRows: { line: number; at: string; value: number }[];
};

export interface Understood {
  understood: string;
  series: SeriesUnderstood[];
  leftOut: LeftOut[];
  leftOutCount: number;
  questions: Question[];
}

export function understoodOf(file: LoggerFile): Understood {
  const told = loggerJson(file);
  const series = told.series.map((one, index) => {
    const { atMs, values, lines } = file.series[index]?.readings ?? { atMs: [], values: [], lines: [] };
    const firstRows = Array.from({ length: Math.min(shownRows, values.length) }, (_, row) => ({
      row,
      at: atMs[row] ?? NaN,
    }))
      .filter(({ at }) => Number.isFinite(at))
      .map(({ row, at }) => ({
        line: lines[row] ?? 0,
        at: new Date(at).toISOString(),
        value: Number((values[row] ?? 0).toFixed(6)),
      }));
    return { ...one, firstRows };
  });
  return {
    understood: file.understood,
    series,
    leftOut: file.leftOut.slice(0, namedLines),
    leftOutCount: file.leftOut.length,
    questions: file.questions,
  };
}
