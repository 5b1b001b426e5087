// What is wrong with a table of runs: told whole, line by line.
import { Refused, type Problem } from '../errors.ts';

export const problem = (
  line: number | null,
  column: string | null,
  value: string,
  message: string,
  expected: string,
): Problem => ({ line, column, value, message, expected });

/** Refuses a table with all that is wrong in it; the first of it is said. */
export function refusedTable(problems: readonly Problem[]): Refused {
  const [first] = problems;
  const where = first?.line == null ? '' : `line ${first.line}${first.column ? `, ${first.column}` : ''}: `;
  const words = `${where}${first?.message ?? 'it cannot be read'}`;
  return new Refused(`invalid input.table: ${words}, ${first?.expected ?? ''}`, 'input.table', first?.expected ?? '', [
    ...problems,
  ]);
}

const columns: Readonly<Record<string, string>> = { lotNumber: 'lot', label: 'container', at: 'date' };

/** What a row was refused for, by its line: `unknown input.label: 4M7, …` is `line 3, container: 4M7 cannot be, …`. */
export function problemOfRow({ message, path, expected }: Refused, line: number): Problem {
  const field = path.split('.').at(-1) ?? '';
  const kind = message.slice(0, message.indexOf(' '));
  const said = message.slice(`${kind} ${path}: `.length, -`, ${expected}`.length);
  const words = kind === 'missing' ? 'nothing is given' : `${said} cannot be`;
  return problem(line, columns[field] ?? field, kind === 'missing' ? '' : said, words, expected);
}
