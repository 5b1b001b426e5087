/** What was understood of a file as plain data, for a script or the admin: no readings, only what they come to. */
import type { LoggerFile } from './file.ts';

export type LoggerJson = {
  series: {
    sensor: string;
    column: string;
    quantity: string;
    unit: string | null;
    /** Counts. */
    readings: number;
    missing: number;
    /** UTC, ISO 8601; null while the file has no times. */
    first: string | null;
    last: string | null;
    /** °C or %; the file's own unit for other quantities. */
    min: number | null;
    max: number | null;
    mean: number | null;
  }[];
  leftOut: { line: number; why: string }[];
  questions: { about: string; choices: string[] }[];
};

export function loggerJson({ series, leftOut, questions }: LoggerFile): LoggerJson {
  return {
    series: series.map(({ sensor, column, quantity, unit, readings, missing, first, last, min, max, mean }) => ({
      sensor,
      column,
      quantity,
      unit,
      readings: readings.values.length,
      missing,
      first: isoText(first),
      last: isoText(last),
      min: rounded(min),
      max: rounded(max),
      mean: rounded(mean),
    })),
    leftOut,
    questions: questions.map(({ about, choices }) => ({ about, choices })),
  };
}

/** Whole seconds are written without a fraction. */
export function isoText(ms: number | null): string | null {
  return ms === null ? null : new Date(ms).toISOString().replace('.000Z', 'Z');
}

/** A conversion leaves 20.900000000000002; no sensor tells a millionth. */
function rounded(value: number | null): number | null {
  return value === null ? null : Number(value.toFixed(6));
}
