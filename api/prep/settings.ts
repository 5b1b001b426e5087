// What the lab sets for its prep: tanks, hood, times, days off, what things are called. All of it has a default.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { missing } from '../errors.ts';
import { partAfter, partRead, settingsWritten } from '../lab-settings.ts';
import { said } from '../stock/service.ts';

const day = z
  .string('a day such as 2026-12-24')
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'a day such as 2026-12-24')
  .refine((text) => new Date(`${text}T00:00:00Z`).toISOString().startsWith(text), 'a day that there is');
const clock = z.string('a time such as 15:00').regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time such as 15:00');
const count = (what: string, most: number) =>
  z.int(`a whole number of ${what}`).min(1, '1 or more').max(most, `at most ${most}`);
const name = z.string('a name').trim().min(1, 'a name').max(60, 'at most 60 signs');
const mixture = z.string('a solvent or mixture').trim().min(2, 'a solvent or mixture').max(120, 'at most 120 signs');

/** The choices, as they are said and as they are stored. */
export const choices = {
  preWash: mixture,
  tanks: count('tanks', 50),
  tankPlates: count('plates', 200),
  tankMl: said.ml,
  preWashMinutes: said.minutes.min(5, '5 min or more').max(600, 'at most 600 min'),
  hoodPlaces: count('plates', 2000),
  people: count('people', 100),
  ovenPlates: count('plates', 2000),
  packMinutes: said.minutes.min(5, '5 min or more').max(600, 'at most 600 min'),
  equilibrateMinutes: said.minutes.max(10_080, 'at most 10080 min (a week)'),
  conditioningVolumes: z.number('column volumes').min(1, '1 or more').max(20, 'at most 20'),
  eveningFrom: clock,
  daysOff: z.array(day).max(400, 'at most 400 days'),
  tankName: name,
  hoodName: name,
  desiccatorName: name,
};

export interface PrepSettings {
  /** What plates are pre-washed in, unless they are for extraction. */
  preWash: string;
  tanks: number;
  /** Plates in one load. */
  tankPlates: number;
  /** Solvent in one load, mL. */
  tankMl: number;
  preWashMinutes: number;
  hoodPlaces: number;
  people: number;
  /** Plates in one oven load, where no oven is described. */
  ovenPlates: number;
  packMinutes: number;
  equilibrateMinutes: number;
  conditioningVolumes: number;
  eveningFrom: string;
  daysOff: string[];
  tankName: string;
  hoodName: string;
  desiccatorName: string;
}

/** The mixture and the 2 to 3 column volumes are common practice; the other numbers are invented and shown as such. */
export const usualPrep: PrepSettings = {
  preWash: 'methanol and chloroform, 1:1 v/v',
  tanks: 1,
  tankPlates: 5,
  tankMl: 200,
  preWashMinutes: 60,
  hoodPlaces: 20,
  people: 1,
  ovenPlates: 10,
  packMinutes: 30,
  equilibrateMinutes: 120,
  conditioningVolumes: 3,
  eveningFrom: '15:00',
  daysOff: [],
  tankName: 'tank',
  hoodName: 'hood',
  desiccatorName: 'desiccator',
};

/** What counts now, and which of it the lab has set itself. */
export function prepSettingsOf(settings: unknown): PrepSettings & { own: string[] } {
  const set = partRead(settings, 'prep', choices);
  return { ...usualPrep, ...set, own: Object.keys(set) };
}

export const prepSettingsSaid = z.object({
  ...(Object.fromEntries(Object.entries(choices).map(([key, kind]) => [key, kind.nullish()])) as {
    [K in keyof typeof choices]: z.ZodOptional<z.ZodNullable<(typeof choices)[K]>>;
  }),
  clientKey: said.clientKey,
});

/** Writes the lab's choices; what is null goes back to its default. */
export function prepSettingsSet(
  context: Context,
  input: z.output<typeof prepSettingsSaid>,
): Promise<{ labId: string }> {
  return settingsWritten(context, 'setPrepSettings', input, (before) => {
    const { clientKey: _, ...told } = input;
    if (Object.keys(told).length === 0) throw missing('input', 'what the lab sets');
    return partAfter(before, 'prep', told);
  });
}
