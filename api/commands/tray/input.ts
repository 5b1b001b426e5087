// What the tray command takes: a sorbent in a tray, an oven, and what is asked, checked before anything is computed.
import { z } from 'zod';
import { dryingFigures } from '../../science/tray/properties.ts';
import { refusal } from '../../bad-input.ts';

// Each schema's error is the end of the sentence: "invalid depthMm: -3, expected …".
const number = (expected: string) => z.number({ error: expected });
const above = (most: number, expected: string) =>
  number(expected).positive({ error: expected }).max(most, { error: expected });
const between = (low: number, high: number, expected: string) =>
  number(expected).min(low, { error: expected }).max(high, { error: expected });
const object = <S extends z.core.$ZodLooseShape>(shape: S) => z.strictObject(shape, { error: 'an object' });

const classes = Object.keys(dryingFigures);
const minutes = (expected: string) => between(0, 100_000, expected);
const target = above(5, 'kg of water per kg of dry sorbent above 0');
const coefficient = (expected: string) => between(0, 10_000, expected);
const emissivity = between(0, 1, 'an emissivity, 0 to 1').optional();

const coefficients = object({
  topWPerM2K: coefficient('W/(m² K), 0 or more').optional(),
  emissivityTop: emissivity,
  filmMm: above(1000, 'mm above 0').optional(),
  bottomWPerM2K: coefficient('W/(m² K), 0 or more').optional(),
  emissivityBottom: emissivity,
});

const oven = object({
  kind: z.enum(['air', 'vacuum'], { error: 'air or vacuum' }),
  temperatureC: between(0, 350, 'a temperature of 0 to 350 °C'),
  fan: z.boolean({ error: 'true or false' }).optional(),
  pressureMbar: between(0.01, 2000, 'a pressure of 0.01 to 2000 mbar').optional(),
  waterMbar: between(0, 2000, 'a vapour pressure of 0 to 2000 mbar').optional(),
  warmUpMinutes: minutes('minutes, 0 or more').optional(),
  gapMm: between(0, 100, 'mm, 0 to 100').optional(),
  pumpM3PerH: above(1e6, 'a pumping speed in m³/h above 0').optional(),
  trayAreaM2: above(1000, 'an area in m² above 0').optional(),
  coefficients: coefficients.optional(),
});

const isotherm = object({
  filmCapacity: above(5, 'kg/kg above 0').optional(),
  filmC: above(1e4, 'a number above 0').optional(),
  filmK: above(0.9999, 'a number above 0 and below 1').optional(),
  poreCapacity: between(0, 5, 'kg/kg, 0 or more').optional(),
  poreActivity: between(0, 1, 'an activity, 0 to 1').optional(),
  poreWidth: between(1e-3, 1, 'an activity, 0.001 to 1').optional(),
  tailCapacity: between(0, 1, 'kg/kg, 0 or more').optional(),
  tailActivity: above(1, 'an activity above 0').optional(),
  tailExponent: between(0.05, 2, 'a number, 0.05 to 2').optional(),
});

const properties = object({
  bulkDensityKgPerM3: between(10, 5000, 'a dry bulk density of 10 to 5000 kg/m³').optional(),
  voidFraction: between(0.01, 0.99, 'a fraction above 0 and below 1').optional(),
  particleUm: between(0.1, 10_000, 'a grain of 0.1 to 10000 µm').optional(),
  heatCapacityJPerKgK: between(100, 10_000, 'J/(kg K), 100 to 10000').optional(),
  solidWPerMK: above(100, 'W/(m K) above 0').optional(),
  gasWPerMK: between(0, 100, 'W/(m K), 0 or more').optional(),
  heatOfSorptionKJPerKg: between(0, 10_000, 'kJ/kg, 0 to 10000').optional(),
  conductivityWPerMK: above(100, 'W/(m K) above 0').optional(),
  isotherm: isotherm.optional(),
});

const tray = object({
  sorbent: z.enum(classes, { error: `one of ${classes.join(', ')}` }),
  depthMm: between(0.1, 500, 'a depth of 0.1 to 500 mm'),
  start: object({
    waterFraction: between(0, 5, 'kg of water per kg of dry sorbent, 0 or more'),
    temperatureC: between(-20, 200, 'a temperature of -20 to 200 °C'),
  }),
  oven,
  trayHeatJPerM2K: between(0, 1e6, 'J/(m² K), 0 or more').optional(),
  properties: properties.optional(),
  minutes: minutes('the minutes of the recipe, 0 or more'),
  atMinutes: z.array(minutes('minutes, 0 or more'), { error: 'a list of minutes' }).optional(),
  targets: z.array(target, { error: 'a list of water fractions' }).optional(),
  maxMinutes: minutes('minutes, 0 or more').optional(),
  deepest: object({ target, of: z.enum(['mean', 'wettest'], { error: 'mean or wettest' }) }).optional(),
});

export type TrayInput = z.infer<typeof tray>;

/** The tray in a parsed file; throws one sentence about the first thing that is wrong, with its path. */
export function trayInput(raw: unknown): TrayInput {
  const parsed = tray.safeParse(raw);
  if (!parsed.success) throw refusal(raw, parsed.error.issues);
  return parsed.data;
}
