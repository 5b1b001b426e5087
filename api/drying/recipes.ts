// How sorbents and plates are dried, and what they never stand. Common practice, no published source; the upper
// limits are from memory: the maker's sheet comes first, and every lab may have its own.
import type { Backing } from '../database/generated/sqlite/client.ts';

export interface Recipe {
  /** What is dried. */
  of: string;
  vacuum: boolean;
  temperatureLowC: number;
  temperatureHighC: number;
  minutesLow: number;
  minutesHigh: number;
  /** Never above, °C. */
  limitC: number;
  source: string;
}

const source = 'common practice; limit from memory, maker’s sheet first';

const recipe = (
  of: string,
  vacuum: boolean,
  temperature: [number, number],
  minutes: [number, number],
  limitC: number,
  more = '',
): Recipe => ({
  of,
  vacuum,
  temperatureLowC: temperature[0],
  temperatureHighC: temperature[1],
  minutesLow: minutes[0],
  minutesHigh: minutes[1],
  limitC,
  source: more ? `${source}; ${more}` : source,
});

/** By sorbent class. */
const sorbents: Record<string, Recipe> = {
  silica: recipe('silica', true, [130, 160], [30, 60], 200, 'hotter it loses silanols for good'),
  alumina: recipe('alumina', true, [130, 160], [30, 60], 500, 'grade I needs 300 to 400 °C'),
  c18: recipe('c18', true, [130, 160], [30, 60], 160, 'it holds little water: often not needed'),
  cyano: recipe('cyano', true, [80, 100], [60, 60], 100),
  diol: recipe('diol', true, [80, 100], [60, 60], 100),
  amino: recipe('amino', true, [60, 60], [60, 120], 80),
  'magnesium silicate': recipe('magnesium silicate', false, [130, 130], [300, 960], 200),
};

/** By backing of plates. */
const backings: Record<Backing, Recipe> = {
  GLASS: recipe(
    'glass-backed plates',
    true,
    [130, 130],
    [30, 30],
    150,
    'gypsum-bound layers may turn powdery under vacuum',
  ),
  ALUMINIUM: recipe('aluminium-backed plates', true, [90, 90], [30, 60], 120),
  PLASTIC: recipe('plastic-backed plates, flat on glass or metal', true, [90, 90], [30, 60], 90),
};

/** What applies to a sorbent, on a backing or loose; of two the lower limit rules. Empty where nothing is known. */
export function recipesOf(sorbentClass: string, backing: Backing | null): Recipe[] {
  const loose = sorbents[sorbentClass];
  const plate = backing ? backings[backing] : undefined;
  const both = [plate, loose].filter((each) => each !== undefined);
  return both.sort((a, b) => a.limitC - b.limitC);
}

/** Why a temperature is too high, or null; unknown limits allow anything. */
export function tooHot(
  sorbentClass: string,
  backing: Backing | null,
  temperatureC: number,
): { limitC: number; why: string } | null {
  const [strictest] = recipesOf(sorbentClass, backing);
  if (!strictest || temperatureC <= strictest.limitC) return null;
  return {
    limitC: strictest.limitC,
    why: `${strictest.of} is never dried above ${strictest.limitC} °C (${strictest.source})`,
  };
}
