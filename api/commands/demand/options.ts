// The words of `npm run demand` to a file and a lead time.
import { parseArgs } from 'node:util';
import type { Lead } from '../../science/demand/lead.ts';
import { BadInput } from '../../bad-input.ts';

const longestLead = 520;
/** What chances typed with a few digits may miss 1 by. */
const allowed = 1e-6;

export function askedOf(words: readonly string[]): { file: string; lead: Lead } {
  const { values, positionals } = parsed(words);
  const [file, more] = positionals;
  if (file === undefined)
    throw new BadInput('missing FILE.csv, expected a table with the columns item, week, quantity');
  if (more !== undefined) throw new BadInput(`unknown argument: ${more}, expected one FILE.csv and --lead`);
  return { file, lead: leadOf(values.lead ?? '1') };
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: { lead: { type: 'string' } }, allowPositionals: true });
  } catch {
    const option = words.find((word) => word.startsWith('-') && !/^--lead(=|$)/.test(word));
    throw new BadInput(
      option === undefined
        ? 'missing --lead, expected weeks as in --lead 3 or chances as in --lead 2:0.25,3:0.5,4:0.25'
        : `unknown option: ${option}, expected --lead`,
    );
  }
}

/** `3`, or `2:0.25,3:0.5,4:0.25`: weeks and their chances. */
function leadOf(text: string): Lead {
  const refused = (expected: string) => new BadInput(`invalid --lead: ${text}, expected ${expected}`);
  if (/^\d+$/.test(text)) return [{ weeks: weeksOf(text, refused), chance: 1 }];
  const lead = text.split(',').map((pair) => {
    const [, weeks = '', chance = ''] = /^\s*(\d+)\s*:\s*(\d*\.?\d+)\s*$/.exec(pair) ?? [];
    if (weeks === '') throw refused('whole weeks, or weeks and chances as in 2:0.25,3:0.5,4:0.25');
    return { weeks: weeksOf(weeks, refused), chance: Number(chance) };
  });
  const sum = lead.reduce((total, { chance }) => total + chance, 0);
  if (Math.abs(sum - 1) > allowed) throw refused(`chances that add up to 1, not ${Number(sum.toPrecision(6))}`);
  return lead.map(({ weeks, chance }) => ({ weeks, chance: chance / sum }));
}

function weeksOf(digits: string, refused: (expected: string) => BadInput): number {
  const weeks = Number(digits);
  if (weeks < 1 || weeks > longestLead) throw refused(`1 to ${longestLead} weeks`);
  return weeks;
}
