/** What the series are that no heading names, and which units theirs are; what cannot be told is asked. */
import { HUMIDITY, TEMPERATURE } from './file.ts';
import type { Answers, Question, Unit } from './file.ts';
import type { RawSeries } from './gather.ts';
import { isTemperatureUnit, SYMBOLS } from './unit.ts';

const QUANTITIES = { temperature: TEMPERATURE, humidity: HUMIDITY };

/** Names the unnamed: by answer, by file name, by what else the file holds; else by their values, and asks. */
export function quantitiesSettled(series: readonly RawSeries[], fileName: string, answers: Answers): Question[] {
  const unnamed = series.filter(({ quantity }) => quantity === null);
  if (unnamed.length === 0) return [];
  const titles = [...new Set(unnamed.map(({ title }) => title))];
  const each = (name: (title: string, index: number) => string): void => {
    for (const one of unnamed) one.quantity = name(one.title, titles.indexOf(one.title));
  };
  const answered = answers.quantity ?? [];
  if (answered.length === titles.length || answered.length === 1) {
    each((_, index) => QUANTITIES[answered[index] ?? answered[0] ?? 'temperature']);
    return [];
  }
  const named = series.some(({ quantity }) => quantity === TEMPERATURE || quantity === HUMIDITY);
  const byName = quantityOfFileName(fileName);
  if (named && answered.length === 0) return (void each((title) => title), []);
  if (byName !== null && answered.length === 0) return (void each(() => byName), []);
  const guesses = titles.map((title) => guessOf(unnamed.filter((one) => one.title === title)));
  const alike = titles.length === 2 && guesses[0] === guesses[1];
  each((_, index) => (alike ? [TEMPERATURE, HUMIDITY][index] : guesses[index]) ?? TEMPERATURE);
  return titles.map((title) => ({
    asks: 'quantity',
    about: `quantity: what is ${title}?`,
    choices: ['temperature', 'humidity'],
  }));
}

/** A file of one quantity often says which in its name. */
export function quantityOfFileName(fileName: string): string | null {
  const plain = fileName.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const humid = /hum|feucht|umid|vocht|(?:^|[^a-z])r[hf](?:[^a-z]|$)/.test(plain);
  const warm = /temp|(?:^|[^a-z])t(?:[^a-z]|$)/.test(plain.replace(/\.\w{1,4}$/, ''));
  if (humid === warm) return null;
  return humid ? HUMIDITY : TEMPERATURE;
}

/** Rooms are seldom above 45 °C and seldom below 30 %: a best reading, always asked about. */
function guessOf(series: readonly RawSeries[]): string {
  const middle = middleOf(series.flatMap(({ value }) => value));
  return middle > 30 && middle <= 100 ? HUMIDITY : TEMPERATURE;
}

/** Settles the units of all series of air; a series keeps a unit that the file states unless an answer overrides it. */
export function unitsSettled(series: readonly RawSeries[], answers: Answers): Question[] {
  const questions: Question[] = [];
  for (const one of series) {
    if (one.quantity === TEMPERATURE) one.unit = temperatureUnit(one, answers, questions);
    else if (one.quantity === HUMIDITY) one.unit = humidityUnit(one, answers, questions);
  }
  return questions.filter((question, index) => questions.findIndex(({ about }) => about === question.about) === index);
}

function temperatureUnit({ title, unit, value }: RawSeries, answers: Answers, questions: Question[]): Unit {
  if (answers.unit) return answers.unit;
  if (unit && isTemperatureUnit(unit)) return unit;
  const middle = middleOf(value);
  // 32 °F is freezing: below it a number is °C, or a freezer in °F, which holds no open sorbent. Above 200 only K is air.
  if (value.length === 0 || middle < 32) return 'C';
  if (middle > 200) return 'K';
  questions.push({ asks: 'unit', about: `unit: is ${title} in °C or °F?`, choices: ['C', 'F'] });
  return middle > 45 ? 'F' : 'C';
}

function humidityUnit({ title, unit, value }: RawSeries, answers: Answers, questions: Question[]): Unit {
  if (answers.humidity) return answers.humidity;
  if (unit === 'fraction') return unit;
  const most = value.reduce((high, one) => Math.max(high, one), -Infinity);
  if (value.length === 0 || most > 1 || most <= 0) return 'percent';
  // All at or below 1: a fraction, or a desiccator below 1 %. A unit in the heading may belong to a spreadsheet's own percent format.
  questions.push({
    asks: 'humidity',
    about: `humidity: is ${title} in percent or a fraction?`,
    choices: ['percent', 'fraction'],
  });
  return unit === 'percent' ? 'percent' : 'fraction';
}

export function shownUnit({ quantity, unit }: RawSeries): string | null {
  return unit && (quantity === TEMPERATURE || quantity === HUMIDITY) ? SYMBOLS[unit] : null;
}

/** The median of up to a few thousand values spread evenly. */
export function middleOf(values: readonly number[]): number {
  const step = Math.max(1, Math.floor(values.length / 2000));
  const some = values.filter((_, index) => index % step === 0).sort((one, other) => one - other);
  return some[Math.floor(some.length / 2)] ?? NaN;
}
