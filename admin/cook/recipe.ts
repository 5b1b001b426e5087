// A recipe as a form: what it asks, and what stands in it at first.
import type { FieldSpec, Typed } from '../act/field.ts';
import type { Recipe } from './questions.ts';

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
