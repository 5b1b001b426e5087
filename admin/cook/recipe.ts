// A recipe in figures one can take in at a glance, as a form, and back into what the API is told.
import type { FieldSpec, Read, Typed } from '../act/field.ts';
import type { Recipe } from './questions.ts';

const ranged = (low: number, high: number, unit: string): string =>
  low === high ? `${low}\u00a0${unit}` : `${low} to ${high}\u00a0${unit}`;

/** Long stays in hours. */
const timed = (low: number, high: number): string =>
  low >= 120 && low % 60 === 0 && high % 60 === 0 ? ranged(low / 60, high / 60, 'h') : ranged(low, high, 'min');

export interface FigureShown {
  name: string;
  words: string;
  /** Nobody in this lab has set it. */
  guessed: boolean;
}

/** Its figures in the order one needs them at the oven. */
export function figures(recipe: Recipe): FigureShown[] {
  const { own, depthMm } = recipe;
  const shown = (name: string, words: string, ...keys: string[]): FigureShown => ({
    name,
    words,
    guessed: !keys.some((key) => own.includes(key)),
  });
  return [
    shown('Oven', recipe.vacuum ? 'vacuum' : 'full of air', 'vacuum'),
    shown(
      'Temperature',
      ranged(recipe.temperatureLowC, recipe.temperatureHighC, '°C'),
      'temperatureLowC',
      'temperatureHighC',
    ),
    shown('Once hot', timed(recipe.minutesLow, recipe.minutesHigh), 'minutesLow', 'minutesHigh'),
    ...(depthMm === null ? [] : [shown('Tray, at most', `${depthMm}\u00a0mm`, 'depthMm')]),
    shown('Hot after', `${recipe.heatUpMinutes}\u00a0min`, 'heatUpMinutes'),
    shown('Cool after', `${recipe.coolDownMinutes}\u00a0min`, 'coolDownMinutes'),
  ];
}

/** Where the upper temperature comes from, as a sentence. */
export const sourceWords = ({ limitSource }: Recipe): string =>
  `${limitSource[0]?.toUpperCase() ?? ''}${limitSource.slice(1)}.`;

const celsius = (name: string, label: string, hint?: string): FieldSpec => ({
  ...{ name, label, kind: 'number', unit: '°C' },
  ...(hint ? { hint } : {}),
});
const minutes = (name: string, label: string, hint?: string): FieldSpec => ({
  ...{ name, label, kind: 'number', unit: 'min' },
  ...(hint ? { hint } : {}),
});

export function recipeFields({ plates, limitC }: Recipe): FieldSpec[] {
  const depth: FieldSpec = { name: 'depthMm', label: 'Tray, at most', kind: 'number', unit: 'mm' };
  return [
    {
      name: 'oven',
      label: 'Oven',
      kind: 'choice',
      choices: [
        { value: 'vacuum', words: 'vacuum' },
        { value: 'air', words: 'full of air' },
      ],
    },
    ...(plates ? [] : [depth]),
    celsius('temperatureLowC', 'Temperature from', `At most ${limitC}\u00a0°C.`),
    celsius('temperatureHighC', 'Temperature to', `At most ${limitC}\u00a0°C.`),
    minutes('minutesLow', 'At least, once hot'),
    minutes('minutesHigh', 'At most, once hot'),
    minutes('heatUpMinutes', 'Hot after'),
    minutes('coolDownMinutes', 'Cool after', 'Closed, in a desiccator.'),
    celsius('upperC', 'Never above', 'Only with the maker’s sheet beside you.'),
    {
      name: 'upperSource',
      label: 'Which says so',
      kind: 'text',
      optional: true,
      hint: 'The maker’s sheet and its date; needed for another upper temperature.',
    },
    { name: 'note', label: 'To mind', kind: 'text', optional: true },
  ];
}

/** What stands in the form at first. */
export const recipeTyped = (recipe: Recipe): Typed => ({
  oven: recipe.vacuum ? 'vacuum' : 'air',
  temperatureLowC: String(recipe.temperatureLowC),
  temperatureHighC: String(recipe.temperatureHighC),
  minutesLow: String(recipe.minutesLow),
  minutesHigh: String(recipe.minutesHigh),
  depthMm: String(recipe.depthMm ?? ''),
  heatUpMinutes: String(recipe.heatUpMinutes),
  coolDownMinutes: String(recipe.coolDownMinutes),
  upperC: String(recipe.limitC),
  upperSource: recipe.own.includes('upperC') ? recipe.limitSource : '',
  note: recipe.note,
});

type Value = Read['values'][string] | null;

/** Everything of a recipe under the names by which it is set. */
const asSet = (recipe: Recipe): Record<string, Value> => ({
  vacuum: recipe.vacuum,
  temperatureLowC: recipe.temperatureLowC,
  temperatureHighC: recipe.temperatureHighC,
  minutesLow: recipe.minutesLow,
  minutesHigh: recipe.minutesHigh,
  depthMm: recipe.depthMm,
  heatUpMinutes: recipe.heatUpMinutes,
  coolDownMinutes: recipe.coolDownMinutes,
  upperC: recipe.limitC,
  upperSource: recipe.own.includes('upperC') ? recipe.limitSource : '',
  note: recipe.note,
});

export type RecipeInput = { dries: string } & Record<string, Value>;

/** Only what was changed: an untouched default stays a default. Null when nothing was. */
export function recipeInput(recipe: Recipe, values: Record<string, Value>): RecipeInput | null {
  const { oven, ...rest } = values;
  const before = asSet(recipe);
  const said: Record<string, Value> = { ...rest, vacuum: oven === 'vacuum' };
  if (!('note' in said)) said['note'] = '';
  const changed = Object.entries(said).filter(([name, value]) => value !== before[name]);
  return changed.length === 0 ? null : { dries: recipe.dries, ...Object.fromEntries(changed) };
}

/** What the lab had set, to set it again; null when that was nothing. */
export function ownInput(recipe: Recipe): RecipeInput | null {
  const { own, dries, limitSource } = recipe;
  if (own.length === 0) return null;
  const all = asSet(recipe);
  const input: RecipeInput = { dries, ...Object.fromEntries(own.map((name) => [name, all[name] ?? null])) };
  if (own.includes('upperC')) input['upperSource'] = limitSource;
  return input;
}
