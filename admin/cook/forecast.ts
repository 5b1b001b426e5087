// What is typed into a form becomes what is asked of the tray model, and its answer what stands beside the fields.
import { percent, typedNumber } from '../say/water.ts';
import type { Typed } from '../act/field.ts';
import type { Forecast, ForecastAsked } from './questions.ts';

export interface About {
  label?: string;
  sorbent?: string;
}

const numberIn = (typed: Typed, ...names: string[]): number | null => {
  const found = names.find((name) => (typed[name] ?? '').trim() !== '');
  return found === undefined ? null : typedNumber(typed[found] ?? '');
};

/** What a form says of oven and tray; what it does not say is the recipe's. */
export function askedOf({ label = '', sorbent = '' }: About, typed: Typed): ForecastAsked {
  const vacuum = 'vacuum' in typed ? typed['vacuum'] === 'yes' : 'oven' in typed ? typed['oven'] === 'vacuum' : null;
  return {
    label: label || null,
    sorbent: label ? null : sorbent || null,
    temperatureC: numberIn(typed, 'temperatureC', 'temperatureLowC'),
    minutes: numberIn(typed, 'minutes', 'minutesHigh'),
    depthMm: numberIn(typed, 'depthMm'),
    vacuum,
    fan: vacuum === true ? null : typed['fan'] === 'yes' || null,
  };
}

const starts: Record<string, string> = {
  ESTIMATE: 'as estimated',
  ROOM_AIR: 'what room air gives it',
  GIVEN: 'as given',
};

const capital = (words: string): string => `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}`;

/** No figure is torn from its unit at the end of a line. */
const whole = (words: string): string => words.replaceAll(/(\d) (?=%|°C|mm|min|mbar)/g, '$1\u00a0');

/** The line at a glance, and what is said below it. */
export const forecastWords = (of: Forecast): { line: string; below: string } => ({
  line: whole(`${capital(of.summary)}.`),
  below: whole(
    `${of.floorSentence} It goes in with ${percent(of.startWaterFraction, 1)}, ${starts[of.startFrom] ?? 'as given'}. Dry basis; the time is known to 30 %.`,
  ),
});

/** Why there is none: too hot is said aloud, what is not known quietly, half-typed fields not at all. */
export function forecastProblem(message: string): { words: string; isLoud: boolean } | null {
  const hot = /^invalid temperatureC: [^,]+, (at most .*)$/s.exec(message)?.[1];
  if (hot) return { words: `${capital(hot)}.`, isLoud: true };
  if (/^invalid sorbent:/.test(message)) {
    return { words: 'How much water it holds is not known, so nothing can be said of what is left.', isLoud: false };
  }
  return null;
}
