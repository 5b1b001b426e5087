// The words of the oven planner's command: a file, and what it is judged by, how long it may take, which dice.
import { parseArgs } from 'node:util';
import { BadInput, shown } from '../../bad-input.ts';
import { type ObjectiveName, objectiveNames } from '../../science/ovens/objective.ts';

export interface PlanOptions {
  readonly words: readonly string[];
  readonly objective: ObjectiveName | null;
  readonly seconds: number | null;
  readonly seed: number;
}

const isObjective = (word: string): word is ObjectiveName => objectiveNames.some((name) => name === word);

function parsed(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { objective: { type: 'string' }, seconds: { type: 'string' }, seed: { type: 'string' } },
    });
  } catch (error) {
    throw new BadInput(
      `unknown argument: ${error instanceof Error ? error.message.split('. ')[0] : ''}, expected FILE.json, --objective, --seconds, --seed`,
    );
  }
}

export function planOptions(args: readonly string[]): PlanOptions {
  const { values, positionals } = parsed(args);
  const { objective, seconds, seed } = values;
  if (objective !== undefined && !isObjective(objective)) {
    throw new BadInput(`unknown --objective: ${shown(objective)}, expected one of ${objectiveNames.join(', ')}`);
  }
  const time = seconds === undefined ? null : Number(seconds);
  if (time !== null && !(time > 0 && time <= 3600)) {
    throw new BadInput(`invalid --seconds: ${shown(seconds)}, expected seconds above 0, at most 3600`);
  }
  const dice = Number(seed ?? 1);
  if (!Number.isInteger(dice)) throw new BadInput(`invalid --seed: ${shown(seed)}, expected a whole number`);
  return { words: positionals, objective: objective ?? null, seconds: time, seed: dice };
}
