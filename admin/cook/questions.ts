// What the recipes and the forecast beside a form ask.
import { question } from '../ask.ts';
import { flag, given, many, maybe, number, text, type Answer } from '../shape.ts';

const recipeFields = {
  of: text,
  dries: text,
  plates: flag,
  vacuum: flag,
  temperatureLowC: number,
  temperatureHighC: number,
  minutesLow: number,
  minutesHigh: number,
  depthMm: maybe(number),
  heatUpMinutes: number,
  coolDownMinutes: number,
  limitC: number,
  because: text,
  limitSource: text,
  note: text,
  own: many(text),
};
export type Recipe = Answer<typeof recipeFields>;

export const recipesQuestion = question<Record<string, never>>('Recipes')({ recipes: many(recipeFields) });

export interface ForecastAsked {
  label: string | null;
  sorbent: string | null;
  temperatureC: number | null;
  minutes: number | null;
  depthMm: number | null;
  vacuum: boolean | null;
  fan: boolean | null;
}

export const forecastQuestion = question<ForecastAsked>(
  'DryingForecast',
  '$label: String, $sorbent: String, $temperatureC: Float, $minutes: Float, $depthMm: Float, $vacuum: Boolean, $fan: Boolean',
)({
  dryingForecast: given(
    'label: $label, sorbent: $sorbent, temperatureC: $temperatureC, minutes: $minutes, depthMm: $depthMm, vacuum: $vacuum, fan: $fan',
    { summary: text, floorSentence: text, startWaterFraction: number, startFrom: text },
  ),
});
export type Forecast = Answer<typeof forecastQuestion.shape>['dryingForecast'];
