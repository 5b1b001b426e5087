// The form of a drying that somebody waited for: all or some of it, by recipe or measured; and what the API is told of it.
import type { Choice, FieldSpec } from '../act/field.ts';
import type { Read } from '../act/field.ts';
import { inOvenFields } from '../act/in-oven.ts';
import { grams } from '../say/water.ts';
import type { Recipe, Request } from './questions.ts';

const ranged = (low: number, high: number): string => (low === high ? String(low) : `${low} to ${high}`);

/** "130 °C for 60 min", as asked for; else what is usual for it. */
export function recipeWords({ temperatureC, minutes, container }: Request): string {
  if (temperatureC !== null) return `${temperatureC}\u00a0°C${minutes === null ? '' : ` for ${minutes}\u00a0min`}`;
  const usual = container.dryingRecipes[0];
  if (!usual) return 'no usual recipe: your lab’s own';
  return `usual: ${ranged(usual.temperatureLowC, usual.temperatureHighC)}\u00a0°C, ${ranged(usual.minutesLow, usual.minutesHigh)}\u00a0min`;
}

/** What it never stands, with where that comes from. */
export const limitWords = (recipe: Recipe | undefined): string =>
  recipe ? `Never above ${recipe.limitC}\u00a0°C (${recipe.source}).` : '';

export function driedFields(request: Request, vessels: readonly Choice[]): FieldSpec[] {
  const { container, dryGrams, plates, temperatureC, minutes, depthMm } = request;
  const isBox = container.kind === 'PLATE_BOX';
  const isPart = dryGrams !== null || plates !== null;
  const usual = container.dryingRecipes[0];
  const some = { field: 'part', is: 'some' };
  const ways: Choice[] = [
    { value: 'recipe', words: 'by recipe: temperature and time' },
    { value: 'measured', words: 'measured: water found afterwards' },
  ];
  const parts: Choice[] = [
    { value: 'all', words: 'all of it, where it is' },
    { value: 'some', words: isBox ? 'some plates, in a box of their own' : 'some of it, in a vessel of its own' },
  ];
  const amount: FieldSpec[] = isBox
    ? [{ name: 'plates', label: 'How many plates', kind: 'number', initial: String(plates ?? ''), when: some }]
    : [
        {
          name: 'grams',
          label: 'How much, dry',
          kind: 'number',
          unit: 'g',
          initial: dryGrams === null ? '' : String(Number(dryGrams.toPrecision(4))),
          hint: `In it: ${grams(container.dryGrams)}.`,
          when: some,
        },
        { name: 'vessel', label: 'Dried in', kind: 'choice', choices: vessels, initial: '', when: some },
      ];
  return [
    { name: 'how', label: 'How dry it is, known', kind: 'choice', choices: ways },
    { name: 'part', label: 'What was dried', kind: 'choice', choices: parts, initial: isPart ? 'some' : 'all' },
    ...amount,
    {
      name: 'temperatureC',
      label: 'Oven',
      kind: 'number',
      unit: '°C',
      initial: String(temperatureC ?? usual?.temperatureLowC ?? ''),
    },
    {
      name: 'minutes',
      label: 'For',
      kind: 'number',
      unit: 'min',
      initial: String(minutes ?? usual?.minutesHigh ?? ''),
    },
    {
      name: 'waterFraction',
      label: 'Water found, dry basis',
      kind: 'number',
      unit: '%',
      scale: 0.01,
      hint: 'By Karl Fischer, or from the weighings below.',
      when: { field: 'how', is: 'measured' },
    },
    { name: 'vacuum', label: 'under vacuum', kind: 'tick', optional: true, initial: usual?.vacuum ? 'yes' : '' },
    ...inOvenFields(isBox).map((field) =>
      field.name === 'depthMm' ? { ...field, initial: String(depthMm ?? '') } : field,
    ),
    { name: 'at', label: 'When it was dry', kind: 'time', optional: true, hint: 'Empty: now.' },
  ];
}

/** What the API takes of what was typed. */
export function driedInput(id: string, values: Record<string, Read['values'][string] | null>): Record<string, unknown> {
  const { how: _how, part: _part, ...told } = values;
  return { id, ...told, ...('grams' in told ? { basis: 'DRY' } : {}) };
}
