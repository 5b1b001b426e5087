// An exposure as GraphQL shows it, and the fields it adds to containers.
import { builder } from '../builder.ts';
import { ConfidenceEnum, ContainerRef, ExposureStateEnum, NumberOriginEnum, type Listed } from '../stock/schema.ts';
import { ownGradeOf } from '../lots/service.ts';
import { lastDriedAt } from './dried-at.ts';
import { depthProfile, waterOverTime } from './plot.ts';
import { DepthPointRef, ExposureRef, GroundRef, WaterPointRef } from './refs.ts';
import { restsOn } from './rests-on.ts';

const asReceived = (dry: number | null): number | null => (dry === null ? null : dry / (1 + dry));
const interval = 'kg water per kg dry sorbent; null where unknown';

ExposureRef.implement({
  description:
    'What the estimator says of a container: how wet it is by now, how sure that is, and when it leaves its band. An estimate: where a result matters, weigh first.',
  fields: (t) => ({
    asOf: t.expose('asOf', { type: 'DateTime', description: 'The instant it was estimated for.' }),
    state: t.field({ type: ExposureStateEnum, description: 'What to do with it.', resolve: ({ state }) => state }),
    reason: t.exposeString('reason', { description: 'Why, in one sentence.' }),
    meanWaterFraction: t.exposeFloat('meanWaterFraction', { nullable: true, description: `Mean water, ${interval}.` }),
    low: t.exposeFloat('low', { nullable: true, description: `Low end of the mean’s 90 % interval, ${interval}.` }),
    high: t.exposeFloat('high', { nullable: true, description: `High end of the mean’s 90 % interval, ${interval}.` }),
    scoopWaterFraction: t.exposeFloat('scoopWaterFraction', {
      nullable: true,
      description: `Water of the next scoop (50 g off the top unless the lab says otherwise), ${interval}.`,
    }),
    scoopLow: t.exposeFloat('scoopLow', {
      nullable: true,
      description: `Low end of the scoop’s 90 % interval, ${interval}.`,
    }),
    scoopHigh: t.exposeFloat('scoopHigh', {
      nullable: true,
      description: `High end of the scoop’s 90 % interval, ${interval}.`,
    }),
    topWaterFraction: t.exposeFloat('topWaterFraction', {
      nullable: true,
      description: `Mean water of the top 10 mm, ${interval}.`,
    }),
    meanAsReceivedFraction: t.float({
      nullable: true,
      description: 'Mean water as received: kg water per kg of the whole; null where unknown.',
      resolve: ({ meanWaterFraction }) => asReceived(meanWaterFraction),
    }),
    scoopAsReceivedFraction: t.float({
      nullable: true,
      description: 'Water of the next scoop as received: kg water per kg of the whole; null where unknown.',
      resolve: ({ scoopWaterFraction }) => asReceived(scoopWaterFraction),
    }),
    chancePastLimit: t.exposeFloat('chancePastLimit', {
      nullable: true,
      description:
        'Chance, 0 to 1, that the next scoop (for plates and columns: the mean) is past the upper end; null without one.',
    }),
    hoursToLimit: t.exposeFloat('hoursToLimit', {
      nullable: true,
      description: 'Hours until it leaves its band as it now stands; 0 when it has, null beyond 90 days.',
    }),
    hoursToLimitOpen: t.exposeFloat('hoursToLimitOpen', {
      nullable: true,
      description: 'The same if it stands open from now on, h.',
    }),
    hoursToLimitClosed: t.exposeFloat('hoursToLimitClosed', {
      nullable: true,
      description: 'The same with its usual closure from now on, h.',
    }),
    upperWaterFraction: t.exposeFloat('upperWaterFraction', {
      nullable: true,
      description: 'Upper end of its band, kg/kg dry; null without one.',
    }),
    lowerWaterFraction: t.exposeFloat('lowerWaterFraction', {
      nullable: true,
      description: 'Lower end of its band, kg/kg dry; null without one.',
    }),
    grade: t.string({
      nullable: true,
      description: 'Activity grade I to V by its water (tables from memory); null where its class has none.',
      resolve: async ({ grade, scoopWaterFraction, asOf, containerId }, _, context) => {
        const driedAt = () => lastDriedAt(context, { containerId, asOf });
        const own =
          scoopWaterFraction !== null && (await ownGradeOf(context, containerId, scoopWaterFraction, driedAt));
        return own || grade;
      },
    }),
    minutesToRoomEquilibrium: t.exposeFloat('minutesToRoomEquilibrium', {
      nullable: true,
      description:
        'Plates only: minutes in room air until in equilibrium with the room, by the model’s still air. Measured: 1 to 2 min (Geiss, Schlitt & Klose 1965).',
    }),
    uncertainAirFraction: t.exposeFloat('uncertainAirFraction', {
      nullable: true,
      description:
        'Share, 0 to 1, of the room’s last 30 days that was filled in or taken for granted; null without a record.',
    }),
    isStale: t.boolean({
      description: 'Something it rests on changed, and it is being estimated again.',
      resolve: ({ staleFrom }) => staleFrom !== null,
    }),
    restsOn: t.field({
      type: [GroundRef],
      complexity: 30,
      description: 'Each number behind it, with where it comes from. What is guessed is said to be.',
      resolve: (exposure, _, context) => restsOn(context, exposure),
    }),
  }),
});

GroundRef.implement({
  description: 'One number that an estimate rests on.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'What it is.' }),
    value: t.exposeFloat('value', { nullable: true, description: 'The number, in `unit`; null where nobody knows.' }),
    unit: t.exposeString('unit', { description: 'Its unit; `1` for a pure number.' }),
    origin: t.field({ type: NumberOriginEnum, description: 'Where it comes from.', resolve: ({ origin }) => origin }),
    confidence: t.field({
      type: ConfidenceEnum,
      description: 'How far to trust it.',
      resolve: ({ confidence }) => confidence,
    }),
    source: t.exposeString('source', { description: 'Where exactly, in words.' }),
  }),
});

WaterPointRef.implement({
  description: 'A container’s water at one instant; kg water per kg dry sorbent.',
  fields: (t) => ({
    at: t.expose('at', { type: 'DateTime', description: 'The instant.' }),
    meanWaterFraction: t.exposeFloat('meanWaterFraction', { description: 'Mean water, kg/kg dry.' }),
    low: t.exposeFloat('low', { description: 'Low end of the mean’s 90 % interval, kg/kg dry.' }),
    high: t.exposeFloat('high', { description: 'High end of the mean’s 90 % interval, kg/kg dry.' }),
    scoopWaterFraction: t.exposeFloat('scoopWaterFraction', { description: 'Water of the next scoop, kg/kg dry.' }),
    scoopLow: t.exposeFloat('scoopLow', { description: 'Low end of the scoop’s 90 % interval, kg/kg dry.' }),
    scoopHigh: t.exposeFloat('scoopHigh', { description: 'High end of the scoop’s 90 % interval, kg/kg dry.' }),
    roomHumidityPercent: t.exposeFloat('roomHumidityPercent', {
      nullable: true,
      description: 'Relative humidity of the room it stood in, % (mean of 15 min); null where unknown.',
    }),
  }),
});

DepthPointRef.implement({
  description: 'Water at one depth of the bed.',
  fields: (t) => ({
    depthMm: t.exposeFloat('depthMm', { description: 'Below the top, mm.' }),
    waterFraction: t.exposeFloat('waterFraction', { description: 'Water there, kg per kg dry.' }),
  }),
});

builder.interfaceFields(ContainerRef, (t) => ({
  exposure: t.field({
    type: ExposureRef,
    nullable: true,
    description: 'What the estimator says of it now; null before its first estimate.',
    // A list has read it already, as far as it is asked for.
    resolve: (container, _, { load }) => (container as Listed).exposure ?? load.exposure.load(container.id),
  }),
  waterOverTime: t.field({
    type: [WaterPointRef],
    complexity: 100,
    args: {
      from: t.arg({ type: 'DateTime', description: 'Where to begin; a week before the end unless given.' }),
      until: t.arg({
        type: 'DateTime',
        description: 'Where to end; now unless given. Beyond now by the room’s typical day, at most 90 days.',
      }),
      points: t.arg.int({ description: 'How many points, evenly spread: 1 to 1000, 200 unless given.' }),
    },
    description: 'Its water over a stretch of time, for a picture; empty where there can be no estimate.',
    resolve: (container, args, context) => waterOverTime(context, container, args),
  }),
  depthProfile: t.field({
    type: [DepthPointRef],
    complexity: 100,
    description: 'Its water at each depth now, from the top; empty where there can be no estimate.',
    resolve: (container, _, context) => depthProfile(context, container),
  }),
}));
