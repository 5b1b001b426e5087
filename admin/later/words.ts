// What was done, in words, for as long as the book has not said it itself.
import { closureWord, count, type Closure } from '../say/words.ts';
import { percent } from '../say/water.ts';

type Input = Record<string, unknown>;

const amount = ({ grams, plates, grossGrams }: Input): string => {
  if (typeof plates === 'number') return count(plates, 'plate');
  if (typeof grams === 'number') return `${grams} g`;
  return typeof grossGrams === 'number' ? `${grossGrams} g with its vessel` : 'all of it';
};

const said: Record<string, (input: Input) => string> = {
  openContainer: () => 'opened',
  closeContainer: ({ closure }) => closureWord[closure as Closure] ?? 'closed',
  moveContainer: ({ room }) => `moved to ${String(room)}`,
  takePortion: (input) =>
    `${amount(input)} taken${typeof input['vessel'] === 'string' ? ` into ${input['vessel']}` : ''}`,
  takePlates: (input) => `${amount(input)} taken`,
  packColumn: () => 'a column packed',
  mixContainer: () => 'mixed or rolled',
  recordDrying: () => 'dried',
  recordRequestedDrying: () => 'dried',
  setScooping: () => 'how it is scooped',
  interrupt: () => 'interrupted',
  combineContainers: ({ into }) => `emptied into ${String(into)}`,
  recordEquilibration: () => 'equilibrated',
  recordWeighing: ({ waterFraction }) =>
    `weighed${typeof waterFraction === 'number' ? `: ${percent(waterFraction)} water` : ''}`,
  recordCount: (input) => `counted: ${amount(input)}`,
  recordLoss: (input) => `${amount(input)} lost`,
  recordSolvent: () => 'touched solvent',
  preWash: () => 'pre-washed',
  solventGone: () => 'solvent gone',
  prewashPlates: ({ solvent }) => `pre-washed with ${String(solvent)}`,
  recordSolventGone: () => 'solvent gone',
  activatePlates: ({ temperatureC }) => `activated at ${String(temperatureC)} °C`,
  equilibratePlates: () => 'equilibrated',
  conditionColumn: () => 'column conditioned',
  spendOnCheck: (input) => `${amount(input)} spent on a check`,
  setHabit: ({ timesADay, minutes }) => `opened by habit ${String(timesADay)} × ${String(minutes)} min`,
  finishContainer: () => 'used up',
  discardContainer: (input) => `${amount(input)} discarded`,
  requestDrying: ({ why }) => `to be dried${typeof why === 'string' && why ? `, ${why}` : ''}`,
  withdrawDrying: () => 'off the list of what to dry',
  untickSteps: () => 'tick taken back',
  correctEvent: ({ void: isVoid }) => (isVoid ? 'taken back' : 'put right'),
};

/** An act that is new to this list is named as the API names it. */
export const actWords = (act: string, input: Input): string =>
  said[act]?.(input) ?? act.replaceAll(/([A-Z])/g, ' $1').toLowerCase();
