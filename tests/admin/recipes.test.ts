// Recipes in words, what a form tells of them, and a forecast beside the fields.
import { describe, expect, it } from 'vitest';
import { askedOf, forecastProblem, forecastWords } from '../../admin/cook/forecast.ts';
import type { Recipe } from '../../admin/cook/questions.ts';
import { figures } from '../../admin/cook/figures.ts';
import { ownInput, recipeInput } from '../../admin/cook/input.ts';
import { recipeFields, recipeTyped } from '../../admin/cook/recipe.ts';
import { readFields } from '../../admin/act/field.ts';
import { noteWords } from '../../admin/act/weighings.ts';

const silica: Recipe = {
  of: 'silica gel',
  dries: 'silica',
  plates: false,
  vacuum: true,
  temperatureLowC: 130,
  temperatureHighC: 160,
  minutesLow: 30,
  minutesHigh: 60,
  depthMm: 10,
  heatUpMinutes: 30,
  coolDownMinutes: 30,
  limitC: 200,
  because: 'it loses silanols for good',
  limitSource: 'from memory; the maker’s sheet comes first',
  note: '',
  own: [],
};

const typedIn = (recipe: Recipe, typed: Record<string, string>) =>
  readFields(recipeFields(recipe), { ...recipeTyped(recipe), ...typed }, () => null);

describe('a recipe on its page', () => {
  it('shows what nobody in the lab has set as a guess', () => {
    expect(figures(silica).every(({ guessed }) => guessed)).toBe(true);
    const own = figures({ ...silica, own: ['minutesHigh'] }).filter(({ guessed }) => !guessed);
    expect(own.map(({ name }) => name)).toEqual(['Once hot']);
  });

  it('says long stays in hours', () => {
    const words = figures({ ...silica, minutesLow: 300, minutesHigh: 960 }).map(({ words: said }) => said);
    expect(words).toContain('5 to 16\u00a0h');
  });

  it('tells only what was changed, so that a default stays one', () => {
    expect(recipeInput(silica, typedIn(silica, {}).values)).toBeNull();
    expect(recipeInput(silica, typedIn(silica, { temperatureHighC: '150', oven: 'air' }).values)).toEqual({
      dries: 'silica',
      temperatureHighC: 150,
      vacuum: false,
    });
    expect(recipeInput(silica, typedIn(silica, { upperC: '190', upperSource: 'sheet of 2025' }).values)).toEqual({
      dries: 'silica',
      upperC: 190,
      upperSource: 'sheet of 2025',
    });
    const noted = { ...silica, note: 'dusty' };
    expect(recipeInput(noted, typedIn(noted, { note: '' }).values)).toEqual({ dries: 'silica', note: '' });
  });

  it('puts back what the lab had set before, and nothing else', () => {
    expect(ownInput(silica)).toBeNull();
    const set = { ...silica, depthMm: 8, limitC: 190, limitSource: 'sheet of 2025', own: ['depthMm', 'upperC'] };
    expect(ownInput(set)).toEqual({ dries: 'silica', depthMm: 8, upperC: 190, upperSource: 'sheet of 2025' });
  });

  it('of plates asks for no depth of a tray', () => {
    expect(recipeFields({ ...silica, plates: true }).map(({ name }) => name)).not.toContain('depthMm');
  });
});

describe('a forecast beside the fields', () => {
  it('asks what is typed, and leaves the rest to the recipe', () => {
    const none = { label: 'AAA-BBB', sorbent: null, minutes: null, vacuum: null, fan: null };
    expect(askedOf({ label: 'AAA-BBB' }, { temperatureC: '140', depthMm: '12,5' })).toEqual({
      ...none,
      temperatureC: 140,
      depthMm: 12.5,
    });
    const ticked = askedOf(
      { sorbent: 'silica' },
      { temperatureLowC: '130', minutesHigh: '60', oven: 'air', fan: 'yes' },
    );
    expect(ticked).toMatchObject({ sorbent: 'silica', temperatureC: 130, minutes: 60, vacuum: false, fan: true });
  });

  it('never tears a figure from its unit', () => {
    const { line, below } = forecastWords({
      summary: '10 mm of this, 60 min at 130 °C under vacuum: about 0.2 % left',
      floorSentence: 'At 130 °C it keeps 0.1 %.',
      startWaterFraction: 0.055,
      startFrom: 'ESTIMATE',
    });
    expect(line).toBe('10\u00a0mm of this, 60\u00a0min at 130\u00a0°C under vacuum: about 0.2\u00a0% left.');
    expect(below).toContain('It goes in with 5.5\u00a0%, as estimated.');
  });

  it('says aloud what is too hot, quietly what nobody knows, and nothing of what is half typed', () => {
    expect(forecastProblem('invalid temperatureC: 210, at most 200 °C for silica gel: above that …')).toEqual({
      words: 'At most 200 °C for silica gel: above that ….',
      isLoud: true,
    });
    expect(forecastProblem('invalid sorbent: Amino, a sorbent whose water is known')?.isLoud).toBe(false);
    expect(forecastProblem('invalid minutes: 0, more than 0 min')).toBeNull();
  });
});

it('the weighings themselves are filed beside what they came to', () => {
  const after = [{ grossGrams: 21.97 }, { grossGrams: 21.9605 }];
  expect(noteWords({ tare: 20, before: 22, after })).toBe('Weighed: 20 g empty, 22 g before; 21.97, 21.9605 g after.');
});
