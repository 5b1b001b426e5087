// What holds for a whole list: its decimal mark, the order of its dates, its units, and what its water counts on.
import type { DateOrder } from '../climate/service.ts';
import { orderOf } from './days.ts';
import { fieldWord, plain, type Field } from './fields.ts';
import { massUnit, marksOf, numberIn, timesIn, unitInHeading, type Mark } from './numbers.ts';
import { answerTo, type Answers, type Question } from './questions.ts';
import { cellText, type Cell } from './sheet.ts';

export interface Facts {
  mark: Mark | null;
  order: DateOrder;
  /** The unit of cells without one, by field; null where pieces could be meant. */
  units: Partial<Record<Field, string | null>>;
  /** `dry` or `received`, by field. */
  basis: Partial<Record<Field, string>>;
  /** Fields of water whose bare numbers are fractions of 1. */
  fractions: ReadonlySet<Field>;
}

export interface Column {
  field: Field;
  heading: string;
  cells: Cell[];
}

const masses: readonly Field[] = ['AMOUNT', 'LEFT', 'TARE'];
const lengths: readonly Field[] = ['INNER_DIAMETER', 'HEIGHT', 'MOUTH_DIAMETER', 'LAYER_THICKNESS'];
const waters: readonly Field[] = ['START_WATER', 'CERTIFICATE_WATER', 'CERTIFICATE_MAX_WATER'];
const days: readonly Field[] = ['RECEIVED', 'OPENED', 'RETEST'];
const numeric: readonly Field[] = [...masses, ...lengths, ...waters, 'COUNT', 'PLATES'];

const among = (columns: readonly Column[], these: readonly Field[]) =>
  columns.filter(({ field }) => these.includes(field));
const filled = (cells: readonly Cell[]) => cells.filter((cell) => cellText(cell) !== '');

/** Numbers of a column that have no unit of their own. */
const bareNumbers = ({ cells }: Column): number[] =>
  filled(cells).flatMap((cell) => {
    const number = numberIn(timesIn(cellText(cell))?.rest ?? cell, null);
    return number?.unit === '' ? [number.value] : [];
  });

const likelyMass = (numbers: readonly number[]): readonly string[] => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return (sorted[Math.floor(sorted.length / 2)] ?? 0) < 20 ? ['kg', 'g', 'mg'] : ['g', 'kg', 'mg'];
};
const unitWords: Record<string, string> = {
  g: 'grams',
  kg: 'kilograms',
  mg: 'milligrams',
  mm: 'millimetres',
  cm: 'centimetres',
};

function unitOf(
  column: Column,
  answers: Answers,
  hasPlates: boolean,
): { unit: string | null; question: Question | null } {
  const { field, heading } = column;
  const said = unitInHeading(heading) ?? null;
  const isMass = masses.includes(field);
  if (said !== null && said !== '%') return { unit: said, question: null };
  const numbers = bareNumbers(column);
  const key = `unit:${field}`;
  const answered = answerTo(answers, key);
  if (answered !== null && (isMass ? massUnit(answered) : answered === 'mm' || answered === 'cm')) {
    return { unit: answered, question: null };
  }
  if (answered === 'pieces' || numbers.length === 0) return { unit: null, question: null };
  if (field === 'LAYER_THICKNESS') return { unit: 'mm', question: null };
  const units = isMass ? likelyMass(numbers) : Math.max(...numbers) < 50 ? ['cm', 'mm'] : ['mm', 'cm'];
  const choices = units.map((unit) => ({ answer: unit, words: unitWords[unit] ?? unit }));
  if (isMass && field !== 'TARE' && hasPlates) choices.push({ answer: 'pieces', words: 'plates, so many' });
  const about = `“${heading || fieldWord[field]}”: ${numbers.slice(0, 3).join(', ')} of what?`;
  return { unit: units[0] ?? null, question: { key, about, choices } };
}

function waterFacts(column: Column, answers: Answers) {
  const { field, heading, cells } = column;
  const questions: Question[] = [];
  const said = /\b(dry|trocken\w*|sec|seche|seca|kuiva\w*)\b/.test(plain(heading.replace(/loss on drying|lod/i, '')))
    ? 'dry'
    : /\b(as received|received|wet|feucht|tel quel|recibido)\b/.test(plain(heading))
      ? 'received'
      : null;
  const basis = said ?? answerTo(answers, `basis:${field}`);
  const name = heading || fieldWord[field];
  if (basis === null && filled(cells).length > 0) {
    const received = { answer: 'received', words: 'of the whole, as received: as certificates and balances speak' };
    const dry = { answer: 'dry', words: 'of the dry sorbent' };
    questions.push({ key: `basis:${field}`, about: `“${name}”: percent of what?`, choices: [received, dry] });
  }
  const numbers = bareNumbers(column);
  const small = numbers.length > 0 && numbers.every((n) => n < 1) && !/%/.test(heading);
  const answered = answerTo(answers, `fraction:${field}`);
  if (small && answered === null) {
    const [example = 0] = numbers.filter((n) => n > 0);
    const choices = [
      { answer: 'yes', words: `${Number((example * 100).toPrecision(3))} %` },
      { answer: 'no', words: `${example} %` },
    ];
    questions.push({ key: `fraction:${field}`, about: `“${name}”: is ${example} …`, choices });
  }
  return { basis: basis ?? 'received', isFraction: small && answered === 'yes', questions };
}

/** What a list leaves open about its numbers and days is asked; meanwhile the likeliest is taken. */
export function factsOf(columns: readonly Column[], answers: Answers): { facts: Facts; questions: Question[] } {
  const questions: Question[] = [];
  const texts = among(columns, numeric).flatMap(({ cells }) =>
    cells.map((cell) => (typeof cell === 'number' ? cell : (timesIn(cell)?.rest ?? cell))),
  );
  const { mark, example } = marksOf(texts);
  const answered = answerTo(answers, 'decimal');
  const told = answered === 'comma' ? ',' : answered === 'point' ? '.' : null;
  if (example !== null && told === null) {
    const digits = example.replace(/[^\d.,].*$/, '');
    const choices = [
      {
        answer: digits.includes(',') ? 'point' : 'comma',
        words: `${digits.replace(/[.,]/g, '')}, thousands set apart`,
      },
      { answer: digits.includes(',') ? 'comma' : 'point', words: `${Number(digits.replace(',', '.'))}, with decimals` },
    ];
    questions.push({ key: 'decimal', about: `How much is ${example}?`, choices });
  }
  const orders = ['day-first', 'month-first', 'year-first'] as const;
  const said = orders.find((one) => one === answerTo(answers, 'dates')) ?? null;
  const dates = orderOf(
    among(columns, days).flatMap(({ cells }) => cells),
    said,
  );
  if (dates.open.length > 0) {
    const choices = dates.open.map((one) => ({ answer: one, words: one.replace('-', ' ') }));
    questions.push({ key: 'dates', about: `Is ${dates.example ?? 'a date'} day first or month first?`, choices });
  }
  const units: Facts['units'] = {};
  const hasPlates = columns.some(({ field }) => field === 'KIND' || field === 'PLATES' || field === 'BACKING');
  for (const column of among(columns, [...masses, ...lengths])) {
    const { unit, question } = unitOf(column, answers, hasPlates);
    units[column.field] = unit;
    if (question) questions.push(question);
  }
  const basis: Facts['basis'] = {};
  const fractions = new Set<Field>();
  for (const column of among(columns, waters)) {
    const water = waterFacts(column, answers);
    basis[column.field] = water.basis;
    if (water.isFraction) fractions.add(column.field);
    questions.push(...water.questions);
  }
  return { facts: { mark: told ?? mark, order: dates.order, units, basis, fractions }, questions };
}
