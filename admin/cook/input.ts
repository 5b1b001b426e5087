// What the API is told of a recipe: only what was changed, or what the lab had set.
import type { Read } from '../act/field.ts';
import type { Recipe } from './questions.ts';

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
