// The query `whatIf`, its input and its answer.
import { builder } from '../builder.ts';
import { ClosureEnum, ExposureStateEnum, inOvenFields } from '../stock/schema.ts';
import { ForecastRef, WaterPointRef, WhatIfRef } from './refs.ts';
import { rawScenario, ScenarioInput } from './scenario-type.ts';
import type { whatIfTypes } from './supposed.ts';
import { whatIf } from './what-if.ts';

ForecastRef.implement({
  description: 'An exposure that would be; kg water per kg dry sorbent.',
  fields: (t) => ({
    at: t.expose('at', { type: 'DateTime', description: 'The instant it would be at.' }),
    state: t.field({ type: ExposureStateEnum, description: 'What would be to do.', resolve: ({ state }) => state }),
    meanWaterFraction: t.exposeFloat('meanWaterFraction', { description: 'Mean water, kg/kg dry.' }),
    low: t.exposeFloat('low', { description: 'Low end of the mean’s 90 % interval, kg/kg dry.' }),
    high: t.exposeFloat('high', { description: 'High end of the mean’s 90 % interval, kg/kg dry.' }),
    scoopWaterFraction: t.exposeFloat('scoopWaterFraction', { description: 'Water of the next scoop, kg/kg dry.' }),
    scoopLow: t.exposeFloat('scoopLow', { description: 'Low end of the scoop’s 90 % interval, kg/kg dry.' }),
    scoopHigh: t.exposeFloat('scoopHigh', { description: 'High end of the scoop’s 90 % interval, kg/kg dry.' }),
    topWaterFraction: t.exposeFloat('topWaterFraction', { description: 'Mean water of the top layer, kg/kg dry.' }),
    chancePastLimit: t.exposeFloat('chancePastLimit', {
      nullable: true,
      description: 'Chance, 0 to 1, that the next scoop is past the upper end; null without one.',
    }),
    hoursToLimit: t.exposeFloat('hoursToLimit', {
      nullable: true,
      description: 'Hours from then until it leaves its band; 0 when it has, null beyond 90 days.',
    }),
    reason: t.exposeString('reason', { description: 'Why, in one sentence.' }),
  }),
});

WhatIfRef.implement({
  description: 'What would be, if.',
  fields: (t) => ({
    exposure: t.field({
      type: [ForecastRef],
      description: 'The exposure at each of the instants asked for, in their order.',
      resolve: ({ exposure }) => exposure,
    }),
    waterGainedGrams: t.exposeFloat('waterGainedGrams', {
      nullable: true,
      description:
        'Water taken up through the mouth until the last of the instants, g: from now on, or from the scenario’s start.',
    }),
    course: t.field({
      type: [WaterPointRef],
      complexity: 100,
      args: { points: t.arg.int({ description: 'How many points, evenly spread: 2 to 1000, 60 unless given.' }) },
      description:
        'Water from now until the last of the instants (or `until`), for a picture; empty for a scenario. At an event’s instant, what stood just before it.',
      resolve: ({ course }, { points }) => course?.(points ?? 60) ?? [],
    }),
  }),
});

const EventEnum = builder.enumType('WhatIfEventType', {
  description: 'What could happen to a container.',
  values: {
    OPENED: { description: 'It would be opened, and stand open.' },
    CLOSED: { description: 'It would be closed.' },
    MOVED: { description: 'It would be moved to another room.' },
    MIXED: { description: 'It would be mixed, so that its water is even.' },
    TAKEN: { description: 'Some of it would be taken.' },
    DRIED: { description: 'It would be dried, to a water content or by a recipe; `at` is when it comes out.' },
  } satisfies Record<(typeof whatIfTypes)[number], { description: string }>,
});

const EventInput = builder.inputType('WhatIfEventInput', {
  description: 'Something that has not happened.',
  fields: (t) => ({
    type: t.field({ type: EventEnum, required: true, description: 'What would happen.' }),
    at: t.field({ type: 'DateTime', description: 'When; now unless given.' }),
    closure: t.field({ type: ClosureEnum, description: 'For CLOSED: with which closure; tight unless given.' }),
    room: t.string({ description: 'For MOVED: the name of the room.' }),
    grams: t.float({ description: 'For TAKEN: dry grams.' }),
    waterFraction: t.float({ description: 'For DRIED: water afterwards, kg per kg dry; or a recipe.' }),
    temperatureC: t.float({ description: 'For DRIED by a recipe: temperature of the oven, °C.' }),
    minutes: t.float({ description: 'For DRIED by a recipe: minutes at that temperature.' }),
    vacuum: t.boolean({ description: 'For DRIED by a recipe: under vacuum; not unless given.' }),
    ...inOvenFields(t),
  }),
});

const ContainerInput = builder.inputType('WhatIfContainerInput', {
  description:
    'A container of the lab, as it stands now, and what would happen to it. Without events: if it stays as it is.',
  fields: (t) => ({
    label: t.string({ required: true, description: 'Its label.' }),
    events: t.field({ type: [EventInput], description: 'What would happen, none of it before now.' }),
    report: t.field({
      type: ['DateTime'],
      required: true,
      description: 'When to tell: 1 to 50 instants from now to 90 days ahead.',
    }),
    until: t.field({
      type: 'DateTime',
      description: 'Where the `course` ends, at most 90 days ahead; the last instant unless given.',
    }),
  }),
});

builder.queryField('whatIf', (t) =>
  t.field({
    type: WhatIfRef,
    complexity: 200,
    description:
      'What would be: a stored container if it stays open, is closed, dried or moved, or a free scenario. The air ahead is the room’s typical day. Give one of the two.',
    args: {
      container: t.arg({ type: ContainerInput, description: 'A container of the lab.' }),
      scenario: t.arg({ type: ScenarioInput, description: 'Nothing but numbers.' }),
    },
    resolve: (_, { container, scenario }, context) =>
      whatIf(context, { container: container ?? null, scenario: scenario ? rawScenario(scenario) : null }),
  }),
);
