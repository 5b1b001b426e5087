// A plate or column as it was run, as GraphQL shows it.
import { builder } from '../builder.ts';
import { ContainerRef, LotRef, PlateRegimeEnum, SorbentRef, there } from '../stock/schema.ts';
import { PersonRef } from '../stock/refs.ts';
import { ChamberEnum, RetentionEnum } from './estimate-type.ts';
import { LotCheckRef, RetentionRunRef } from './refs.ts';
import { spotsOf, type SpotRead } from './spots.ts';

const SpotRef = builder.objectRef<SpotRead>('RetentionSpot').implement({
  description: 'One spot, or one peak.',
  fields: (t) => ({
    compound: t.exposeString('compound', { description: 'The reference compound.' }),
    value: t.exposeFloat('value', { description: 'Rf, k or column volumes, as the run says.' }),
    spotMm: t.exposeFloat('spotMm', { nullable: true, description: 'How far it ran, mm; null where Rf was read.' }),
    frontMm: t.exposeFloat('frontMm', { nullable: true, description: 'How far the front ran, mm.' }),
  }),
});

builder.node(RetentionRunRef, {
  name: 'RetentionRun',
  description: 'One plate or column as it was run: of a lot check, or as a daily check.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { database, lab }) => database.read.retentionRun.findFirst({ where: { id, labId: lab.id } }),
  fields: (t) => ({
    at: t.expose('at', { type: 'DateTime', description: 'When it was run.' }),
    retention: t.field({
      type: RetentionEnum,
      description: 'What its values are.',
      resolve: ({ retention }) => retention,
    }),
    spots: t.field({ type: [SpotRef], description: 'What was read.', resolve: ({ spots }) => spotsOf(spots) }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent or plate kind.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    lot: t.field({
      type: LotRef,
      description: 'The lot it was of.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
    container: t.field({
      type: ContainerRef,
      nullable: true,
      description: 'The container it came from; null where nobody named it.',
      resolve: ({ containerId }, _, { load }) => (containerId ? load.container.load(containerId) : null),
    }),
    check: t.field({
      type: LotCheckRef,
      nullable: true,
      description: 'The lot check it belongs to; null of a daily check.',
      resolve: ({ checkId }, _, { load }) => (checkId ? load.lotCheck.load(checkId) : null),
    }),
    ranBy: t.field({
      type: PersonRef,
      nullable: true,
      description: 'Who ran it; null where nobody said.',
      resolve: ({ ranById }, _, { load }) => (ranById ? load.person.load(ranById) : null),
    }),
    tank: t.exposeString('tank', { nullable: true, description: 'The tank it shared with others that day.' }),
    plate: t.exposeString('plate', { nullable: true, description: 'Its own mark.' }),
    box: t.exposeString('box', { nullable: true, description: 'The box it came from.' }),
    chamber: t.field({
      type: ChamberEnum,
      nullable: true,
      description: 'What it was developed in.',
      resolve: ({ chamber }) => chamber,
    }),
    isLined: t.exposeBoolean('isLined', { nullable: true, description: 'The chamber was lined with paper.' }),
    saturationMinutes: t.exposeFloat('saturationMinutes', {
      nullable: true,
      description: 'The chamber stood with eluent before, min.',
    }),
    eluent: t.exposeString('eluent', { nullable: true, description: 'The eluent.' }),
    eluentBatch: t.exposeString('eluentBatch', { nullable: true, description: 'Its batch.' }),
    stabiliser: t.exposeString('stabiliser', { nullable: true, description: 'What it is stabilised with.' }),
    temperatureC: t.exposeFloat('temperatureC', { nullable: true, description: 'Temperature, °C.' }),
    distanceMm: t.exposeFloat('distanceMm', { nullable: true, description: 'Distance run, mm.' }),
    humidityPercent: t.exposeFloat('humidityPercent', { nullable: true, description: 'Humidity, % RH.' }),
    isAirFilled: t.exposeBoolean('isAirFilled', {
      description: 'Temperature or humidity was read off the room’s air of that time.',
    }),
    regime: t.field({
      type: PlateRegimeEnum,
      nullable: true,
      description: 'How its plates were prepared; null where they were not.',
      resolve: ({ regime }) => regime,
    }),
    hoursPrepared: t.exposeFloat('hoursPrepared', {
      nullable: true,
      description: 'Since they were activated or equilibrated, h.',
    }),
    waterFraction: t.exposeFloat('waterFraction', {
      nullable: true,
      description: 'Water at use, kg per kg dry sorbent; null where it is unknown.',
    }),
    isWaterFilled: t.exposeBoolean('isWaterFilled', {
      description: 'The water is what was estimated in its container at that time.',
    }),
    note: t.exposeString('note', { nullable: true, description: 'A note.' }),
    takenBackAt: t.expose('takenBackAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back; null while it counts.',
    }),
  }),
});
