// Weighed equilibrations as GraphQL takes and shows them: the salts, a fit before it is kept, and keeping it.
import { builder } from '../builder.ts';
import { checked, invalid, Refused } from '../errors.ts';
import { addMutation } from '../mutation.ts';
import type { CurvePoint } from '../science/equilibrated.ts';
import { saltHumidity, saltSource, saltTable } from '../science/salts.ts';
import { fitKept, fitSaid, isothermFitted, startingClasses, type Fitted, type FittedPoint } from './catalogue-fit.ts';
import { BasisEnum } from './enums.ts';
import { sorbentOf } from './find.ts';
import { fresh } from './fresh.ts';
import { SorbentKept } from './keep-mutations.ts';

const SaltRef = builder
  .objectRef<{ name: string; fromC: number; toC: number; temperatureC: number }>('Salt')
  .implement({
    description: 'A saturated salt solution, over which air has a known humidity.',
    fields: (t) => ({
      name: t.exposeString('name', { description: 'Its name.' }),
      relativeHumidityPercent: t.float({
        nullable: true,
        description: 'Relative humidity over it at the temperature asked, %; null outside its range.',
        resolve: ({ name, temperatureC }) => {
          const humidity = saltHumidity(name, temperatureC);
          return humidity === null ? null : 100 * humidity;
        },
      }),
      fromC: t.exposeFloat('fromC', { description: 'Lowest temperature it is known for, °C.' }),
      toC: t.exposeFloat('toC', { description: 'Highest temperature it is known for, °C.' }),
      source: t.string({ description: 'Where its humidity comes from.', resolve: ({ name }) => saltSource(name) }),
    }),
  });

builder.queryField('salts', (t) =>
  t.field({
    type: [SaltRef],
    description: 'Saturated salts, driest first.',
    args: {
      temperatureC: t.arg.float({ defaultValue: 25, description: 'At this temperature, °C; 25 when not given.' }),
    },
    resolve: (_, { temperatureC }) => {
      const at = temperatureC ?? 25;
      if (!(at >= -50 && at <= 100)) throw invalid('temperatureC', at, 'from -50 to 100 °C');
      return saltTable.map((salt) => ({ ...salt, temperatureC: at }));
    },
  }),
);

const PointRef = builder.objectRef<FittedPoint>('WeighedPoint').implement({
  description: 'A weighed equilibration as it was understood.',
  fields: (t) => ({
    over: t.exposeString('over', { description: 'What it stood over.' }),
    relativeHumidityPercent: t.float({
      description: 'Relative humidity it stood in, %.',
      resolve: ({ humidity }) => 100 * humidity,
    }),
    humiditySource: t.exposeString('humiditySource', { description: 'Where that comes from.' }),
    waterFraction: t.exposeFloat('waterFraction', {
      description: 'Its water, kg per kg dry sorbent, counted from the mass after 150 °C.',
    }),
    addedFraction: t.exposeFloat('addedFraction', {
      description: 'Of that, what its drying left behind and was added, kg/kg; 0 from 150 °C on.',
    }),
  }),
});

const CurveRef = builder.objectRef<CurvePoint>('IsothermPoint').implement({
  description: 'Water at one relative humidity of 25 °C, kg per kg dry sorbent.',
  fields: (t) => ({
    relativeHumidityPercent: t.float({
      description: 'Relative humidity, %.',
      resolve: ({ humidity }) => 100 * humidity,
    }),
    classWaterFraction: t.float({
      description: 'What the class holds that it began from.',
      resolve: ({ before }) => before,
    }),
    waterFraction: t.float({ description: 'What the fitted curve holds.', resolve: ({ fitted }) => fitted }),
    low: t.exposeFloat('low', { description: 'Lower end of its 90 % range.' }),
    high: t.exposeFloat('high', { description: 'Upper end of its 90 % range.' }),
  }),
});

const FitRef = builder.objectRef<Fitted>('IsothermFit').implement({
  description: 'A sorbent’s own isotherm as weighed samples give it; nothing is written.',
  fields: (t) => ({
    fromClass: t.exposeString('fromClass', { description: 'The class it began from.' }),
    points: t.field({
      type: [PointRef],
      description: 'The samples as understood.',
      resolve: ({ points }) => [...points],
    }),
    curve: t.field({ type: [CurveRef], description: 'From 0 to 90 % RH.', resolve: ({ curve }) => [...curve] }),
    misfitPercent: t.float({
      description: 'How far samples lie from the curve, root mean square, %.',
      resolve: ({ rms }) => 100 * rms,
    }),
    cannotTell: t.stringList({
      description: 'What these samples leave open.',
      resolve: ({ cannotTell }) => [...cannotTell],
    }),
    notes: t.stringList({ description: 'What looks wrong but may be true.', resolve: ({ notes }) => [...notes] }),
    source: t.exposeString('source', { description: 'What will stand beside the numbers.' }),
  }),
});

const PointInput = builder.inputType('WeighedPointInput', {
  description: 'A sample that stood at one humidity until nothing changed, and was weighed before and after drying.',
  fields: (t) => ({
    salt: t.string({ description: 'The saturated salt it stood over; `salts` lists them.' }),
    humidityPercent: t.float({ description: 'Or the relative humidity that was read there, %.' }),
    temperatureC: t.float({ required: true, description: 'Temperature it stood at, °C.' }),
    tareGrams: t.float({ description: 'The empty bottle, g; not given: masses are of the sample alone.' }),
    beforeGrams: t.float({ description: 'After it stood there, g.' }),
    afterGrams: t.float({ description: 'After drying, g.' }),
    waterFraction: t.float({ description: 'Or the water found, as a fraction.' }),
    basis: t.field({ type: BasisEnum, description: 'What that fraction is counted on; as received when not given.' }),
    driedAtC: t.float({ description: 'Dried at, °C; 150 when not given. What stays behind below 150 °C is added.' }),
    sdPercent: t.float({ description: 'How well the water is known, percent points, one standard deviation.' }),
  }),
});

const fromText = `The class to begin from, one of ${startingClasses.join(', ')}; its own when not given.`;

const FitInput = builder.inputType('IsothermFitInput', {
  description: 'Weighed samples of a sorbent.',
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Name of the sorbent.' }),
    fromClass: t.string({ description: fromText }),
    points: t.field({ type: [PointInput], required: true, description: 'The samples, in any order.' }),
    weighedOn: t.field({ type: 'DateTime', description: 'When they were weighed; now when not given.' }),
    by: t.string({ description: 'By whom, by role.' }),
  }),
});

builder.queryField('isothermFit', (t) =>
  t.field({
    type: FitRef,
    description: 'Fits weighed equilibrations without keeping anything.',
    complexity: 50,
    args: { input: t.arg({ type: FitInput, required: true, description: 'The samples.' }) },
    errors: {
      types: [Refused],
      union: { name: 'IsothermFitResult', description: 'The fit, or what is wrong with a weighing.' },
    },
    resolve: async (_, args, { database, lab, now }) => {
      const input = checked(fitSaid, args.input);
      const sorbent = await sorbentOf({ tx: database.read, labId: lab.id }, input.sorbent);
      return isothermFitted(input, sorbent.sorbentClass, now());
    },
  }),
);

addMutation('fitSorbentIsotherm', {
  description:
    'Keeps weighed equilibrations as a sorbent’s own isotherm: its numbers are measured from then on, and all its estimates are made anew. `isothermFit` shows it before.',
  check: fitSaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, fitKept(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Name of the sorbent.' }),
    fromClass: t.string({ description: fromText }),
    points: t.field({ type: [PointInput], required: true, description: 'The samples, in any order.' }),
    weighedOn: t.field({ type: 'DateTime', description: 'When they were weighed; now when not given.' }),
    by: t.string({ description: 'By whom, by role.' }),
  }),
});
