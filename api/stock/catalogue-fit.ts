// Weighed equilibrations become a sorbent's own isotherm: read, corrected to the one zero, fitted; kept only when asked.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { equilibrated, type Equilibrated, type WeighedPoint } from '../science/equilibrated.ts';
import { condensingActivity } from '../science/isotherm.ts';
import { sorbentClass, sorbentClasses, type SorbentClass } from '../science/properties.ts';
import { dryingIsotherm, fromZero, residualWater, zeroWaterC } from '../science/residual.ts';
import { saltHumidity, saltSource, saltTable } from '../science/salts.ts';
import { lossOnDrying } from '../science/weighings.ts';
import { write } from '../work.ts';
import { propertiesWritten, type PropertySaid } from './catalogue.ts';
import { sorbentOf } from './find.ts';
import { isothermNames, propertyBounds, type PropertyName } from './properties.ts';
import { said } from './said.ts';
import { dryBasis } from './water.ts';

const grams = z.number('grams').min(0, '0 g or more').max(1e6, 'at most 1000000 g');

const pointSaid = z.object({
  salt: z.string().trim().nullish(),
  humidityPercent: said.percent.nullish(),
  temperatureC: z.number('°C').min(0, '0 °C or more').max(80, '80 °C or less'),
  tareGrams: grams.nullish(),
  beforeGrams: grams.nullish(),
  afterGrams: grams.nullish(),
  waterFraction: said.waterFraction.nullish(),
  basis: said.basis,
  driedAtC: z.number('°C').min(60, '60 °C or more').max(400, '400 °C or less').nullish(),
  sdPercent: z.number('percent points').positive('more than 0').max(20, 'at most 20').nullish(),
});

export const fitSaid = z.object({
  sorbent: said.name,
  fromClass: z.string('a class').trim().toLowerCase().nullish(),
  points: z.array(pointSaid, 'weighed samples').min(1, 'at least one weighed sample').max(40, 'at most 40'),
  weighedOn: z.date('a day').nullish(),
  by: z.string().trim().max(80, 'at most 80 signs').nullish(),
  clientKey: said.clientKey,
});
type FitSaid = z.output<typeof fitSaid>;
type PointSaid = z.output<typeof pointSaid>;

/** Classes with an isotherm, from which a lab's own may begin. */
export const startingClasses = sorbentClasses.filter(({ isotherm }) => isotherm !== null).map(({ name }) => name);

export interface FittedPoint extends WeighedPoint {
  readonly over: string;
  readonly humiditySource: string;
  /** Water that drying at its temperature left behind and that was added. */
  readonly addedFraction: number;
}

export interface Fitted extends Equilibrated {
  readonly points: readonly FittedPoint[];
  readonly fromClass: string;
  readonly source: string;
}

function humidityOf(point: PointSaid, path: string): { humidity: number; over: string; source: string } {
  const { salt, humidityPercent, temperatureC } = point;
  if (salt) {
    const known = saltTable.find(({ name }) => name === salt.toLowerCase());
    if (!known) throw unknown(`${path}.salt`, salt, `one of: ${saltTable.map(({ name }) => name).join(', ')}`);
    const humidity = saltHumidity(known.name, temperatureC);
    if (humidity === null) {
      throw invalid(
        `${path}.temperatureC`,
        temperatureC,
        `${known.fromC} to ${known.toC} °C, where ${known.name} is known`,
      );
    }
    return { humidity, over: known.name, source: saltSource(known.name) };
  }
  if (humidityPercent == null)
    throw missing(`${path}.salt`, 'the salt it stood over, or the relative humidity that was read');
  if (!(humidityPercent > 0)) throw invalid(`${path}.humidityPercent`, humidityPercent, 'more than 0 %');
  return { humidity: humidityPercent / 100, over: `air of ${humidityPercent} % RH`, source: 'read by the lab' };
}

/** Loss on drying, dry basis, as weighed or as given. */
function lossOf(point: PointSaid, path: string): number {
  const { beforeGrams, afterGrams, tareGrams, waterFraction } = point;
  if (waterFraction != null) {
    if (beforeGrams != null || afterGrams != null) {
      throw invalid(`${path}.waterFraction`, waterFraction, 'the masses or the water, not both');
    }
    if (point.basis === 'AS_RECEIVED' && waterFraction > 0.9) {
      throw invalid(`${path}.waterFraction`, waterFraction, 'at most 0.9 as received');
    }
    return point.basis === 'DRY' ? waterFraction : dryBasis(waterFraction);
  }
  if (beforeGrams == null) throw missing(`${path}.beforeGrams`, 'the mass after it stood over the salt, g');
  if (afterGrams == null) throw missing(`${path}.afterGrams`, 'the mass after drying, g');
  const walked = lossOnDrying({
    tareG: tareGrams ?? 0,
    beforeG: beforeGrams,
    after: [{ grossG: afterGrams, minutes: null }],
    resolutionG: 0.001,
    mostWaterFraction: 1,
  });
  if (walked.kind === 'walked') return walked.waterFraction;
  const field = walked.path.startsWith('tare')
    ? 'tareGrams'
    : walked.path.startsWith('before')
      ? 'beforeGrams'
      : 'afterGrams';
  throw invalid(`${path}.${field}`, point[field] ?? 0, walked.expected);
}

function pointOf(point: PointSaid, base: SorbentClass, path: string): FittedPoint {
  const { humidity, over, source } = humidityOf(point, path);
  if (humidity >= condensingActivity) {
    const field = point.salt ? 'salt' : 'humidityPercent';
    const shown = point.salt ?? point.humidityPercent;
    throw invalid(
      `${path}.${field}`,
      shown,
      `below ${100 * condensingActivity} % RH: above it water condenses between the grains`,
    );
  }
  const lost = lossOf(point, path);
  const field = point.waterFraction == null ? 'afterGrams' : 'waterFraction';
  if (!(lost > 0)) {
    throw invalid(
      `${path}.${field}`,
      point[field],
      'less than before drying: a sample without water tells nothing of its isotherm',
    );
  }
  const driedAtC = point.driedAtC ?? zeroWaterC;
  const residual = base.isotherm ? residualWater(dryingIsotherm(base.isotherm, base.name), driedAtC) : 0;
  const waterFraction = fromZero(lost, residual);
  const sd = point.sdPercent == null ? null : point.sdPercent / 100;
  const { temperatureC } = point;
  return {
    humidity,
    temperatureC,
    waterFraction,
    sd,
    over,
    humiditySource: source,
    addedFraction: waterFraction - lost,
  };
}

const listed = (points: readonly FittedPoint[]): string =>
  points.map(({ over, temperatureC }) => `${over} at ${temperatureC} °C`).join(', ');

/** Fits without writing; refuses impossible weighings with where and why. */
export function isothermFitted(input: FitSaid, ownClass: string, now: Date): Fitted {
  const wanted = input.fromClass ?? ownClass;
  const base = sorbentClass(wanted);
  if (!base?.isotherm || !base.doubt) {
    const expected = `the class to begin from, one of: ${startingClasses.join(', ')}`;
    throw input.fromClass
      ? unknown('input.fromClass', input.fromClass, expected)
      : missing('input.fromClass', expected);
  }
  const points = input.points.map((point, i) => pointOf(point, base, `input.points.${i}`));
  const fit = equilibrated({ isotherm: base.isotherm, doubt: base.doubt, name: base.name }, points);
  if (!fit) throw missing('input.points', 'a sample with water in it');
  const on = (input.weighedOn ?? now).toISOString().slice(0, 10);
  const by = input.by ? `, by ${input.by}` : '';
  const source = `weighed over ${listed(points)}; ${on}${by}; begun from ${base.name}`.slice(0, 500);
  return { ...fit, points, fromClass: base.name, source };
}

/** The numbers that a fit sets, by name. */
const fittedNumbers = ({ isotherm, doubt }: Fitted): [PropertyName, number][] => [
  ...isothermNames.map((name): [PropertyName, number] => [name, isotherm[name]]),
  ['capacityDoubt', doubt.below],
  ['capacityDoubtWet', doubt.above],
];

/** Keeps a fit as the sorbent's own numbers; a packing that nobody knows is taken over from the class, as a guess. */
export function fitKept(context: Context, input: FitSaid) {
  return write(context, 'fitSorbentIsotherm', input, async (work) => {
    const sorbent = await sorbentOf(work, input.sorbent);
    const fitted = isothermFitted(input, sorbent.sorbentClass, work.now);
    const measured = fittedNumbers(fitted).map(([name, value]): PropertySaid => {
      const [least, most] = propertyBounds[name];
      const kept = Math.min(most, Math.max(least, value));
      return { name, value: kept, origin: 'MEASURED', confidence: 'DERIVED', source: fitted.source };
    });
    const base = sorbentClass(fitted.fromClass);
    const known = await work.tx.sorbentProperty.findMany({ where: { sorbentId: sorbent.id, value: { not: null } } });
    const packing = (['bulkDensityKgPerM3', 'voidFraction'] as const).flatMap((name): PropertySaid[] => {
      const value = base?.[name] ?? null;
      if (value === null || known.some((one) => one.name === name)) return [];
      const source = `taken over from ${fitted.fromClass}; weigh a measured volume to know it`;
      return [{ name, value, origin: 'DEFAULT', confidence: 'GUESS', source }];
    });
    await propertiesWritten(work, sorbent.id, [...measured, ...packing], (index) => `input.points.${index}`);
    return { sorbentId: sorbent.id };
  });
}
