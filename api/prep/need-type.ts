// A need, as GraphQL shows it.
import { builder } from '../builder.ts';
import { HoldRef, LotRef, SorbentRef, there } from '../stock/refs.ts';
import { BackingEnum, PlateRegimeEnum } from '../stock/schema.ts';
import { RoomRef } from '../climate/refs.ts';
import { sizeOf, type ColumnSize } from './column.ts';
import { NeedKindEnum, NeedStateEnum, PrepStepKindEnum } from './enums.ts';
import { obstacleIn, type Obstacle } from './obstacle.ts';
import { NeedRef, PrepStepRef } from './refs.ts';
import { prepSettingsOf } from './settings.ts';

export const ObstacleRef = builder.objectRef<Obstacle>('NeedObstacle').implement({
  description: 'What stands in the way of a need.',
  fields: (t) => ({
    what: t.exposeString('what', {
      description: 'What there is not enough of: `stock`, `tank`, `hood`, `hands`, `oven` or `time`.',
    }),
    sentence: t.exposeString('sentence', { description: 'In words.' }),
  }),
});

const ColumnRef = builder.objectRef<ColumnSize>('NeededColumn').implement({
  description: 'A column in numbers.',
  fields: (t) => ({
    diameterMm: t.exposeFloat('diameterMm', { description: 'Inner diameter, mm.' }),
    bedLengthMm: t.exposeFloat('bedLengthMm', { description: 'Length of the bed, mm.' }),
    dryGrams: t.exposeFloat('dryGrams', { description: 'Dry sorbent in the bed, g.' }),
    columnVolumeMl: t.exposeFloat('columnVolumeMl', { description: 'One column volume, mL.' }),
    conditioningMl: t.exposeFloat('conditioningMl', { description: 'Mobile phase to condition with, mL.' }),
    flowMlPerMin: t.exposeFloat('flowMlPerMin', { description: 'Flow, mL/min.' }),
    conditioningMinutes: t.exposeFloat('conditioningMinutes', { description: 'Conditioning takes so long, min.' }),
    eluentMl: t.float({
      nullable: true,
      description: 'Eluent of a run by the flash table, mL; null where the sample was not said.',
      resolve: ({ flash }) => flash?.eluentMl ?? null,
    }),
    fractionMl: t.float({
      nullable: true,
      description: 'Fractions by the flash table, mL; null where the sample was not said.',
      resolve: ({ flash }) => flash?.fractionMl ?? null,
    }),
  }),
});

builder.node(NeedRef, {
  name: 'Need',
  description: 'Something that must be ready at a time.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.need.load(id),
  fields: (t) => ({
    kind: t.field({ type: NeedKindEnum, description: 'What is needed.', resolve: ({ kind }) => kind }),
    state: t.field({
      type: NeedStateEnum,
      description: 'How it stands.',
      resolve: async (need, _, { load, now }) => {
        if (need.droppedAt) return 'DROPPED' as const;
        if (need.metAt) return 'MET' as const;
        if (need.at <= now()) return 'OVERDUE' as const;
        if (obstacleIn(need.obstacle)) return 'CANNOT_BE_MET' as const;
        const steps = await load.stepsOfNeed.load(need.id);
        return steps.some(({ doneAt }) => doneAt) ? ('BEGUN' as const) : ('PLANNED' as const);
      },
    }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'Of which sorbent.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    lot: t.field({
      type: LotRef,
      nullable: true,
      description: 'Of which lot: the one that was wished, else the one that was chosen; null while there is none.',
      resolve: ({ lotId }, _, { load }) => (lotId ? load.lot.load(lotId) : null),
    }),
    isLotWished: t.exposeBoolean('isLotWished', { description: 'Somebody asked for that lot.' }),
    at: t.expose('at', { type: 'DateTime', description: 'When it must be ready.' }),
    day: t.exposeString('day', { description: 'The day on the lab’s clock, such as 2026-11-27.' }),
    room: t.field({
      type: RoomRef,
      nullable: true,
      description: 'Where; null when nobody said.',
      resolve: ({ roomId }, _, { load }) => (roomId ? load.room.load(roomId) : null),
    }),
    forWhom: t.exposeString('forWhom', { description: 'For whom, or for what.' }),
    note: t.exposeString('note', { nullable: true, description: 'A note; null without one.' }),
    priority: t.exposeInt('weight', { description: 'The planner’s weight: 1, 2, 4 or 8. Heavier needs choose first.' }),
    plates: t.exposeInt('plates', { nullable: true, description: 'How many plates; null for others.' }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'Backing asked for; null for any.',
      resolve: ({ backing }) => backing,
    }),
    isForExtraction: t.exposeBoolean('isForExtraction', {
      description: 'The plates are for extraction: pre-washed in its mobile phase.',
    }),
    isPreWashed: t.exposeBoolean('isPreWashed', { description: 'The plates are pre-washed.' }),
    mobilePhase: t.exposeString('mobilePhase', { nullable: true, description: 'Mobile phase; null when nobody said.' }),
    regime: t.field({
      type: PlateRegimeEnum,
      nullable: true,
      description: 'Regime of the plates; null for others.',
      resolve: ({ regime }) => regime,
    }),
    regimeHumidityPercent: t.exposeFloat('regimeHumidityPercent', {
      nullable: true,
      description: 'Air to equilibrate with, % RH; null for the room’s.',
    }),
    dryGrams: t.float({
      nullable: true,
      description: 'Dry sorbent, g; null for others.',
      resolve: ({ dryGrams }) => dryGrams,
    }),
    limitWaterFraction: t.exposeFloat('limitWaterFraction', {
      nullable: true,
      description: 'Most water, kg per kg dry sorbent; null: its band.',
    }),
    sampleMg: t.exposeFloat('sampleMg', {
      nullable: true,
      description: 'Mass of the sample, mg; null when nobody said.',
    }),
    deltaRf: t.exposeFloat('deltaRf', {
      nullable: true,
      description: 'ΔRf of what is to be parted; null when nobody said.',
    }),
    column: t.field({
      type: ColumnRef,
      nullable: true,
      description: 'The column in numbers; null for others.',
      resolve: async (need, _, { load, lab }) => {
        if (need.kind !== 'COLUMN') return null;
        const sorbent = there(await load.sorbent.load(need.sorbentId), 'sorbent');
        const density = (await load.properties.load(sorbent.id)).find(({ name }) => name === 'bulkDensityKgPerM3');
        return sizeOf(
          need,
          sorbent.sorbentClass,
          density?.value ?? null,
          prepSettingsOf(lab.settings).conditioningVolumes,
        );
      },
    }),
    weekdays: t.intList({
      nullable: true,
      description: 'On which weekdays it comes again, Monday 1 to Sunday 7; null when it comes once.',
      resolve: async ({ seriesId }, _, { database }) => {
        if (!seriesId) return null;
        const series = await database.read.needSeries.findUnique({ where: { id: seriesId } });
        return series?.endedAt ? null : (series?.weekdays as number[]);
      },
    }),
    kept: t.field({
      type: [HoldRef],
      description: 'What is kept for it until it is handed over; empty afterwards, when it is with whom it was for.',
      resolve: async ({ id, metAt }, _, { load }) => (metAt ? [] : load.holdsOfNeed.load(id)),
    }),
    steps: t.field({
      type: [PrepStepRef],
      description: 'Steps to it in order, done ones too.',
      resolve: async ({ id }, _, { load }) => load.stepsOfNeed.load(id),
    }),
    nextStep: t.field({
      type: PrepStepKindEnum,
      nullable: true,
      description: 'What comes next; null when nothing does.',
      resolve: async ({ id }, _, { load }) =>
        (await load.stepsOfNeed.load(id)).find(({ doneAt }) => !doneAt)?.kind ?? null,
    }),
    obstacle: t.field({
      type: ObstacleRef,
      nullable: true,
      description: 'What stands in the way; null when it can be met.',
      resolve: ({ obstacle }) => obstacleIn(obstacle),
    }),
    firstPossibleAt: t.expose('firstPossibleAt', {
      type: 'DateTime',
      nullable: true,
      description:
        'The first time at which it could be, in quarter hours; null when it can be met, or within four weeks cannot.',
    }),
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'When it was told.' }),
    metAt: t.expose('metAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was handed over; null while it was not.',
    }),
    droppedAt: t.expose('droppedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was dropped; null while it was not.',
    }),
  }),
});
