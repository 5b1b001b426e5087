/** What a logger's file turns into, and the answers that settle what the file itself leaves open. */

export const TEMPERATURE = 'temperature';
export const HUMIDITY = 'relative humidity';

/** The order of day and month in a written date. */
export type DateOrder = 'day-first' | 'month-first' | 'year-first';

/** The unit of the numbers in the file; what is kept is always °C and %. */
export type Unit = 'C' | 'F' | 'K' | 'percent' | 'fraction';

export type Answers = {
  /** IANA name or fixed offset of the lab: the zone of a file that names none. */
  labZone: string;
  /** Overrides a zone in the header or preamble, never an offset written beside a time. */
  zone?: string | undefined;
  dates?: DateOrder | undefined;
  unit?: 'C' | 'F' | 'K' | undefined;
  humidity?: 'percent' | 'fraction' | undefined;
  /** What the columns without a name are, in the file's order. */
  quantity?: readonly ('temperature' | 'humidity')[] | undefined;
  /** When the first row was read, for a file without times; in the file's zone unless it carries an offset. */
  start?: string | undefined;
  everySeconds?: number | undefined;
};

/** Readings in order of time, in °C or % (other quantities as the file has them); the three arrays run together. */
export type Readings = { atMs: Float64Array; values: Float64Array; lines: Uint32Array };

export type Series = {
  sensor: string;
  /** The heading as in the file, or `column 2` where there is none. */
  column: string;
  /** `temperature`, `relative humidity`, or what else it is, which nobody reads on. */
  quantity: string;
  /** The unit of the file's numbers, before conversion; null where it is not known. */
  unit: string | null;
  readings: Readings;
  /** Times without a value: an empty cell, NaN, `--`, a sentinel. */
  missing: number;
  /** UTC milliseconds; null while the file has no times. */
  first: number | null;
  last: number | null;
  min: number | null;
  max: number | null;
  mean: number | null;
};

export type LeftOut = { line: number; why: string };

/** Which of the answers is asked for. */
export type Asked = 'dates' | 'zone' | 'unit' | 'humidity' | 'quantity' | 'start';

export type Question = { asks: Asked; about: string; choices: string[] };

export type LoggerFile = {
  series: Series[];
  leftOut: LeftOut[];
  questions: Question[];
  /** One sentence for a person. */
  understood: string;
};

/** `is` completes "this file is …": `a PNG picture`, `empty`. */
export type NotALogger = { is: string; expected: string };

/** One sheet of cells. `lines` numbers the rows as an editor does, from 1. */
export type Table = {
  name: string | null;
  /** How it is written, for the sentence: `comma-separated UTF-8 text`. */
  written: string;
  rows: string[][];
  lines: Uint32Array;
  /** False when the last row has no line end, so that it may be torn. */
  ended: boolean;
};
