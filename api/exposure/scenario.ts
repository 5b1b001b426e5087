// What the estimate command takes: one container, its air and what happened to it, checked before anything is computed.
import { z } from 'zod';
import { BadInput, pathText, refusal, shown, valueAt, type Path } from '../bad-input.ts';
import { sorbentClasses } from '../science/properties.ts';

// Each schema's error is the end of the sentence: "invalid container.bedDepthMm: -3, expected …".
const number = (expected: string) => z.number({ error: expected });
const above = (expected: string) => number(expected).positive({ error: expected });
const between = (low: number, high: number, expected: string) =>
  number(expected).min(low, { error: expected }).max(high, { error: expected });

const instant = z.iso
  .datetime({ offset: true, error: 'a time like 2026-03-02T08:00:00Z' })
  .transform((text) => Date.parse(text) / 1000);
const length = between(1e-3, 1e5, 'a length in mm above 0');
const volumeL = above('a volume in litres above 0').optional();
const waterFraction = between(0, 2, 'kg of water per kg of dry sorbent, 0 to 2');
const limit = above('kg of water per kg of dry sorbent above 0, or null').nullable().optional();

const closureWords = ['tight', 'well closed', 'loosely covered', 'sealed'] as const;
const conductance = z.strictObject({ conductanceM3PerS: between(0, 1, 'a conductance in m³/s, 0 to 1') });
const closureError = `one of ${closureWords.join(', ')}, or { "conductanceM3PerS": x }`;
const closure = z.union([z.enum(closureWords), conductance], { error: closureError });
const lid = z.union([z.literal('open'), z.enum(closureWords), conductance], { error: `open, ${closureError}` });

const bed = z.strictObject({
  kind: z.literal('bed').optional(),
  bedDepthMm: length,
  bedDiameterMm: length,
  headspaceMm: between(0, 1e5, 'a height in mm, 0 or more').default(0),
  mouthDiameterMm: length.optional(),
  volumeL,
  closure: lid,
});
const plate = z.strictObject({
  kind: z.literal('plate'),
  layerMm: between(0.01, 10, 'a layer of 0.01 to 10 mm'),
  areaCm2: above('an area in cm² above 0'),
  volumeL,
  closure: lid,
});

const isotherm = z.strictObject({
  filmCapacity: above('kg/kg above 0'),
  filmC: above('a number above 0'),
  filmK: between(1e-6, 0.9999, 'a number above 0 and below 1'),
  poreCapacity: between(0, 5, 'kg/kg, 0 or more').default(0),
  poreActivity: between(0, 1, 'an activity, 0 to 1').default(0.8),
  poreWidth: between(1e-3, 1, 'an activity, 0.001 to 1').default(0.05),
});
const estimated = sorbentClasses.filter((one) => one.isotherm !== null).map(({ name }) => name);
const sorbentError = `one of ${estimated.join(', ')}, or an object with its isotherm`;
const named = z.enum(estimated, { error: sorbentError });
const given = z.strictObject({
  isotherm,
  bulkDensityKgPerM3: between(10, 5000, 'a dry bulk density of 10 to 5000 kg/m³'),
  voidFraction: between(0.01, 0.99, 'a fraction above 0 and below 1'),
});

const climateError = 'a list of readings, or { "file": path }';
const reading = z.strictObject({
  at: instant,
  temperatureC: between(-30, 60, 'a temperature of -30 to 60 °C'),
  humidityPercent: between(0, 100, 'a relative humidity of 0 to 100 %'),
});
const loggerFile = z.strictObject({
  file: z.string({ error: 'the path of a logger file' }).min(1, { error: 'the path of a logger file' }),
  zone: z.string({ error: 'a zone like Europe/London or +02:00' }).optional(),
  dates: z.enum(['day-first', 'month-first'], { error: 'day-first or month-first' }).optional(),
  unit: z.enum(['C', 'F', 'K'], { error: 'C, F or K' }).optional(),
  humidity: z.enum(['percent', 'fraction'], { error: 'percent or fraction' }).optional(),
  quantity: z.array(z.enum(['temperature', 'humidity'], { error: 'temperature or humidity' })).optional(),
  start: z.string({ error: 'a time' }).optional(),
  everySeconds: above('seconds above 0').optional(),
});

const grams = above('grams of dry sorbent above 0');
const event = z.discriminatedUnion(
  'type',
  [
    z.strictObject({ at: instant, type: z.literal('opened') }),
    z.strictObject({ at: instant, type: z.literal('closed'), closure: closure.default('tight') }),
    z.strictObject({ at: instant, type: z.literal('mixed') }),
    z.strictObject({ at: instant, type: z.literal('taken'), grams }),
    z.strictObject({ at: instant, type: z.literal('dried'), waterFraction }),
    z.strictObject({
      at: instant,
      type: z.literal('weighed'),
      waterFraction,
      of: z.enum(['whole', 'scoop'], { error: 'whole or scoop' }).default('whole'),
    }),
  ],
  { error: 'one of opened, closed, mixed, taken, dried, weighed' },
);

const scenario = z.strictObject({
  sorbent: z.union([named, given], { error: sorbentError }),
  container: z.discriminatedUnion('kind', [bed, plate], { error: 'a bed or, with "kind": "plate", a layer' }),
  start: z.strictObject({ at: instant, waterFraction: waterFraction.nullable() }),
  climate: z.union([z.array(reading).min(1, { error: 'at least one reading' }), loggerFile], { error: climateError }),
  events: z.array(event, { error: 'a list of events' }).default([]),
  limitWaterFraction: limit,
  lowestWaterFraction: limit,
  scoopGrams: grams.default(50),
  topMm: length.default(10),
  volumeL,
  filmMmPerS: between(0.01, 1000, 'mm/s, 0.01 to 1000').default(3),
  pressurePa: between(10_000, 200_000, 'a pressure of 10000 to 200000 Pa').default(101_325),
  report: z.array(instant, { error: 'a list of times' }).min(1, { error: 'at least one time' }),
});
export type Scenario = z.infer<typeof scenario>;

const longestS = 10 * 366 * 86_400;

/** The scenario in a parsed file; throws one sentence about the first thing that is wrong, with its path. */
export function scenarioOf(raw: unknown): Scenario {
  const parsed = scenario.safeParse(raw);
  if (!parsed.success) throw refusal(raw, parsed.error.issues);
  const { data } = parsed;
  const startS = data.start.at;
  for (const [i, { at }] of data.events.entries()) if (at < startS) throw early(raw, ['events', i, 'at']);
  for (const [i, at] of data.report.entries()) {
    if (at < startS) throw early(raw, ['report', i]);
    if (at > startS + longestS)
      throw new BadInput(
        `invalid report[${i}]: ${shown(valueAt(raw, ['report', i]))}, expected within ten years of start.at`,
      );
  }
  const { limitWaterFraction: upper, lowestWaterFraction: lower } = data;
  if (upper != null && lower != null && lower >= upper) {
    throw new BadInput(`invalid lowestWaterFraction: ${lower}, expected less than limitWaterFraction`);
  }
  return data;
}

const early = (raw: unknown, path: Path): BadInput =>
  new BadInput(`invalid ${pathText(path)}: ${shown(valueAt(raw, path))}, expected not before start.at`);
