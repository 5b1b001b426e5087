// What is told of recipes.
import { act } from '../act/told.ts';
import { flag, maybe, number, text } from '../shape.ts';

const answer = { of: text };
export const setRecipeAct = act(
  'setRecipe',
  'DryingRecipe',
  {
    dries: text,
    vacuum: maybe(flag),
    temperatureLowC: maybe(number),
    temperatureHighC: maybe(number),
    minutesLow: maybe(number),
    minutesHigh: maybe(number),
    depthMm: maybe(number),
    heatUpMinutes: maybe(number),
    coolDownMinutes: maybe(number),
    upperC: maybe(number),
    upperSource: maybe(text),
    note: maybe(text),
  },
  answer,
);
export const resetRecipeAct = act('resetRecipe', 'DryingRecipe', { dries: text }, answer);
