/** What was understood of a file, for a person at a terminal. */
import type { LeftOut, LoggerFile, Question } from '../../climate/logger/file.ts';
import { loggerJson } from '../../climate/logger/json.ts';

/** Lines listed one by one; --json has all. */
const LISTED = 40;

export function understoodText(file: LoggerFile): string {
  return [
    file.understood,
    '',
    ...tableLines(file),
    ...leftOutLines(file.leftOut),
    ...questionLines(file.questions),
  ].join('\n');
}

function tableLines(file: LoggerFile): string[] {
  const heading = [
    'sensor',
    'column',
    'quantity',
    'unit',
    'readings',
    'missing',
    'first (UTC)',
    'last (UTC)',
    'min',
    'mean',
    'max',
  ];
  const rows = loggerJson(file).series.map((one) => [
    one.sensor,
    one.column,
    one.quantity,
    one.unit ?? '',
    String(one.readings),
    String(one.missing),
    one.first ?? '',
    one.last ?? '',
    figure(one.min),
    figure(one.mean),
    figure(one.max),
  ]);
  const widths = heading.map((word, column) => Math.max(word.length, ...rows.map((row) => row[column]?.length ?? 0)));
  return [heading, ...rows].map((row) =>
    row
      .map((cell, column) => padded(cell, widths[column] ?? 0, column))
      .join('  ')
      .trimEnd(),
  );
}

/** Numbers stand to the right. */
function padded(cell: string, width: number, column: number): string {
  return column >= 4 && column !== 6 && column !== 7 ? cell.padStart(width) : cell.padEnd(width);
}

function figure(value: number | null): string {
  return value === null ? '' : value.toFixed(2);
}

/** `unnamed`: how many there are beyond the list. */
export function leftOutLines(leftOut: readonly LeftOut[], unnamed = 0): string[] {
  if (leftOut.length === 0) return [];
  const listed = leftOut.slice(0, LISTED).map(({ line, why }) => `  line ${line}: ${why}`);
  const more = leftOut.length - listed.length + unnamed;
  return ['', 'left out:', ...listed, ...(more > 0 ? [`  and ${more} more`] : [])];
}

function questionLines(questions: readonly Question[]): string[] {
  return questions.length === 0
    ? []
    : ['', 'to be answered:', ...questions.map((question) => `  ${question.about} ${answerBy(question)}`)];
}

/** How the command is told: `(--dates day-first or --dates month-first)`. */
function answerBy({ asks, choices }: Question): string {
  if (asks === 'start')
    return `(--start T --every SECONDS${choices.length > 0 ? `; the file says ${choices.join(' or ')}` : ''})`;
  return `(${choices.map((choice) => `--${asks} ${choice}`).join(' or ')})`;
}
