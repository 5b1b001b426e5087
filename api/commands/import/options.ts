/** The words of `npm run import` to what they ask for. */
import { parseArgs } from 'node:util';
import { answerRefused } from '../../climate/logger/answers.ts';
import type { Answers, DateOrder } from '../../climate/logger/file.ts';
import { BadInput } from '../../bad-input.ts';

export type Asked = {
  file: string;
  /** Whose air it becomes; null for a dry run. */
  room: string | null;
  json: boolean;
  answers: Omit<Answers, 'labZone'>;
};

const OPTIONS = {
  room: { type: 'string' },
  'dry-run': { type: 'boolean' },
  json: { type: 'boolean' },
  zone: { type: 'string' },
  dates: { type: 'string' },
  unit: { type: 'string' },
  humidity: { type: 'string' },
  quantity: { type: 'string' },
  start: { type: 'string' },
  every: { type: 'string' },
} as const;

const names = Object.keys(OPTIONS)
  .map((name) => `--${name}`)
  .join(', ');

/** Throws `BadInput` with the option that is wrong. */
export function askedOf(words: readonly string[]): Asked {
  const { values, positionals } = parsed(words);
  const [file, more] = positionals;
  if (file === undefined) throw new BadInput("missing FILE, a logger's file to read");
  if (more !== undefined) throw new BadInput(`unknown word: ${more}, one FILE and the options ${names}`);
  const answers = {
    zone: values.zone,
    dates: oneOf<DateOrder>('dates', values.dates, ['day-first', 'month-first', 'year-first']),
    unit: oneOf('unit', values.unit, ['C', 'F', 'K']),
    humidity: oneOf('humidity', values.humidity, ['percent', 'fraction']),
    quantity: values.quantity
      ?.split(',')
      .flatMap((word) => oneOf('quantity', word.trim(), ['temperature', 'humidity'] as const) ?? []),
    start: values.start,
    everySeconds: secondsOf(values.every),
  } as const;
  const refused = answerRefused({ ...answers, labZone: 'UTC' });
  if (refused)
    throw new BadInput(refused.message.replace(new RegExp(`^(\\w+) ${refused.path}`), `$1 --${refused.path}`));
  const dryRun = values['dry-run'] ?? false;
  if (values.json && !dryRun) throw new BadInput('missing --dry-run, --json shows what a dry run understood');
  if (!dryRun && !values.room) throw new BadInput('missing --room, the name of the room whose air it is');
  return { file, room: dryRun ? null : (values.room ?? null), json: values.json ?? false, answers };
}

function secondsOf(word: string | undefined): number | undefined {
  if (word === undefined) return undefined;
  if (/^\d+(?:\.\d+)?$/.test(word)) return Number(word);
  throw new BadInput(`invalid --every: ${word}, expected a number of seconds`);
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    const option = /'(-[^' ]*)/.exec(error instanceof Error ? error.message : '')?.[1] ?? 'option';
    const isKnown = Object.hasOwn(OPTIONS, option.replace(/^--/, ''));
    throw new BadInput(
      isKnown ? `invalid ${option}: ${valueless(option)}` : `unknown option: ${option}, one of ${names}`,
    );
  }
}

function valueless(option: string): string {
  return option === '--dry-run' || option === '--json' ? 'a value, it takes none' : 'nothing, it needs a value';
}

function oneOf<const Word extends string>(
  name: string,
  value: string | undefined,
  choices: readonly Word[],
): Word | undefined {
  if (value === undefined) return undefined;
  const found = choices.find((choice) => choice.toLowerCase() === value.toLowerCase());
  if (found === undefined) throw new BadInput(`unknown --${name}: ${value}, one of ${choices.join(', ')}`);
  return found;
}
