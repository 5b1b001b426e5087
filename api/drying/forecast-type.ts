// The query `dryingForecast`: what an oven would leave, before it is done.
import { builder } from '../builder.ts';
import { dryingForecast } from './forecast.ts';
import type { DryingForecast } from './forecast-told.ts';
import { RecipeRef } from './recipe-type.ts';

const LimitEnum = builder.enumType('DryingLimit', {
  description: 'What holds a drying back.',
  values: {
    HEAT: { description: 'Heat that has to get in.' },
    VAPOUR: { description: 'Vapour that has to get out.' },
    FLOOR: { description: 'The water of the oven’s own air: it never gets so dry there.' },
  },
});

const StartEnum = builder.enumType('DryingStart', {
  description: 'Where the water comes from that a forecast begins with.',
  values: {
    GIVEN: { description: 'It was given.' },
    ESTIMATE: { description: 'The estimate of the container.' },
    ROOM_AIR: { description: 'What room air would give it.' },
  },
});

const asReceived = (fraction: number): number => fraction / (1 + fraction);
const minutesOf = (seconds: number | null): number | null => (seconds === null ? null : seconds / 60);

const ForecastRef = builder.objectRef<DryingForecast>('DryingForecast').implement({
  description:
    'What an oven would leave, by the tray model; water in kg per kg dry sorbent unless it says otherwise. Minutes count from when the load goes into the hot oven, and are known to 30 %.',
  fields: (t) => ({
    summary: t.string({ complexity: 30, description: 'It in one line.', resolve: (of) => of.summary() }),
    recipe: t.field({
      type: RecipeRef,
      nullable: true,
      description: 'The recipe that stood in for what was not given; null where none is known.',
      resolve: ({ recipe }) => recipe,
    }),
    temperatureC: t.float({ description: 'Temperature of the oven, °C.', resolve: ({ oven }) => oven.temperatureC }),
    minutes: t.exposeFloat('minutes', { description: 'Minutes in the hot oven.' }),
    depthMm: t.exposeFloat('depthMm', { nullable: true, description: 'How deep it lies, mm; null for plates.' }),
    vacuum: t.boolean({ description: 'Under vacuum.', resolve: ({ oven }) => oven.vacuum }),
    pressureMbar: t.float({ description: 'Pressure in the chamber, mbar.', resolve: ({ oven }) => oven.pressureMbar }),
    waterMbar: t.float({
      description: 'Vapour pressure of water in the chamber, mbar.',
      resolve: ({ oven }) => oven.waterMbar,
    }),
    startWaterFraction: t.exposeFloat('startWaterFraction', { description: 'Water that it goes in with.' }),
    startFrom: t.field({
      type: StartEnum,
      description: 'Where that comes from.',
      resolve: ({ startFrom }) => startFrom,
    }),
    meanWaterFraction: t.float({ description: 'Mean water afterwards.', resolve: ({ moments }) => moments[1].mean }),
    meanAsReceivedFraction: t.float({
      description: 'The same, kg per kg as received.',
      resolve: ({ moments }) => asReceived(moments[1].mean),
    }),
    meanLow: t.float({
      description: 'Mean water if the time is 30 % longer than it seems.',
      resolve: ({ moments }) => Math.min(moments[0].mean, moments[2].mean),
    }),
    meanHigh: t.float({
      description: 'Mean water if the time is 30 % shorter than it seems.',
      resolve: ({ moments }) => Math.max(moments[0].mean, moments[2].mean),
    }),
    wettestWaterFraction: t.float({
      description: 'Water of the wettest spot afterwards.',
      resolve: ({ moments }) => moments[1].wettest,
    }),
    wettestAsReceivedFraction: t.float({
      description: 'The same, kg per kg as received.',
      resolve: ({ moments }) => asReceived(moments[1].wettest),
    }),
    wettestAtMm: t.float({
      description: 'How deep below the open top that spot lies, mm.',
      resolve: ({ moments }) => 1000 * moments[1].wettestM,
    }),
    centreC: t.float({
      description: 'Temperature of its middle then, °C.',
      resolve: ({ moments }) => moments[1].centreC,
    }),
    target: t.exposeFloat('target', { description: 'The target asked for; a fifth of the upper end when none was.' }),
    minutesToMean: t.float({
      nullable: true,
      description: 'Minutes until the mean is at the target; null when not within a day.',
      resolve: ({ crossing }) => minutesOf(crossing.meanS),
    }),
    minutesToWettest: t.float({
      nullable: true,
      description: 'Minutes until the wettest spot is at the target; null when not within a day.',
      resolve: ({ crossing }) => minutesOf(crossing.wettestS),
    }),
    deepestMm: t.float({
      nullable: true,
      complexity: 30,
      description:
        'Deepest tray whose wettest spot is at the target in these minutes, 1 to 100 mm; null for none, and for plates.',
      resolve: (of) => of.deepestMm(),
    }),
    limitedBy: t.field({
      type: LimitEnum,
      nullable: true,
      complexity: 30,
      description: 'What holds it back on the way to the target; null where it is there from the start.',
      resolve: (of) => {
        if (of.floor > of.target) return 'FLOOR' as const;
        const limit = of.limit();
        if (!limit) return null;
        return limit.by === 'heat' ? ('HEAT' as const) : ('VAPOUR' as const);
      },
    }),
    floorWaterFraction: t.float({
      description: 'Water that stays in this oven however long it takes.',
      resolve: ({ floor }) => floor,
    }),
    floorSentence: t.exposeString('floorSentence', { description: 'That in a sentence.' }),
    notes: t.field({
      type: ['String'],
      description: 'What else to mind.',
      resolve: ({ notes }) => [...notes],
    }),
  }),
});

builder.queryField('dryingForecast', (t) =>
  t.field({
    type: ForecastRef,
    complexity: 30,
    description:
      'What an oven would leave of a container, or of a sorbent in a tray. What is not given comes from the recipe. Refused above what the material stands. Nothing is recorded.',
    args: {
      label: t.arg.string({ description: 'Label of a container; or give a sorbent.' }),
      sorbent: t.arg.string({ description: 'Name of a sorbent of the lab, or a class such as `silica`.' }),
      grams: t.arg.float({ description: 'Dry g in a tray, with its area; or give a depth.' }),
      trayAreaCm2: t.arg.float({ description: 'Area of the tray, cm².' }),
      startWaterFraction: t.arg.float({
        description: 'Water it goes in with, kg per kg dry; as estimated when not given, or as room air makes it.',
      }),
      temperatureC: t.arg.float({ description: 'Temperature of the oven, °C; the recipe’s least when not given.' }),
      minutes: t.arg.float({ description: 'Minutes in the hot oven; the recipe’s most when not given.' }),
      vacuum: t.arg.boolean({ description: 'Under vacuum; as the recipe has it when not given.' }),
      depthMm: t.arg.float({ description: 'How deep it lies, mm; as the recipe has it when not given.' }),
      pressureMbar: t.arg.float({ description: 'Pressure in the chamber, mbar; under vacuum 20 when not given.' }),
      waterMbar: t.arg.float({
        description: 'Vapour pressure of water in the chamber, mbar; the room’s, or 5 under vacuum, when not given.',
      }),
      fan: t.arg.boolean({ description: 'A fan moves the air.' }),
      room: t.arg.string({ description: 'Name of the room that the oven draws from; the container’s when not given.' }),
      target: t.arg.float({
        description: 'Water it should come to, kg per kg dry; a fifth of the upper end when not given.',
      }),
    },
    resolve: (_, args, context) => dryingForecast(context, args),
  }),
);
