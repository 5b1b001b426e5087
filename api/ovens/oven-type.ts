// An oven and its care as GraphQL shows them.
import { builder } from '../builder.ts';
import { RoomRef, SensorRef } from '../climate/refs.ts';
import { PersonRef } from '../stock/refs.ts';
import { there } from '../stock/schema.ts';
import { careKinds } from './care-said.ts';
import { careSentence, offsetOf } from './care-words.ts';
import { hoursOf, ownHours } from './oven-hours.ts';
import { OvenCareRef, OvenRef } from './refs.ts';
import type { OpenHours } from './rules.ts';
import { ovenAreaCm2 } from './shares.ts';

export const OvenKindEnum = builder.enumType('OvenKind', {
  description: 'What an oven is full of.',
  values: {
    AIR: { description: 'Air of its room.' },
    VACUUM: { description: 'Next to nothing: it is pumped out.' },
  },
});

const kindWords: Record<(typeof careKinds)[number], string> = {
  TRUE_TEMPERATURE: 'Its true temperature was measured at a set one.',
  VACUUM_GAUGE: 'Its vacuum gauge was checked.',
  PUMP_OIL: 'The oil of its pump was changed.',
  COLD_TRAP: 'Its cold trap was emptied.',
  BAKE_OUT: 'It was baked out empty.',
  OUT_OF_ORDER: 'It is out of order.',
  HYGROMETER: 'A hygrometer was checked over a saturated salt.',
};

export const OvenCareKindEnum = builder.enumType('OvenCareKind', {
  description: 'What was looked after.',
  values: Object.fromEntries(careKinds.map((kind) => [kind, { description: kindWords[kind] }])) as Record<
    (typeof careKinds)[number],
    { description: string }
  >,
});

const HoursRef = builder.objectRef<OpenHours>('OvenHours').implement({
  description: 'Hours on some days, on the lab’s own clock.',
  fields: (t) => ({
    days: t.exposeIntList('days', { description: 'Days, Monday 1 to Sunday 7.' }),
    from: t.exposeString('from', { description: 'From, such as `07:00`.' }),
    to: t.exposeString('to', { description: 'To, such as `19:00`; before `from` it is that of the next day.' }),
  }),
});

builder.node(OvenCareRef, {
  name: 'OvenCare',
  description: 'Something noted of an oven or a hygrometer: checked, renewed, out of order.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.ovenCare.load(id),
  fields: (t) => ({
    kind: t.field({ type: OvenCareKindEnum, description: 'What was looked after.', resolve: ({ kind }) => kind }),
    oven: t.field({
      type: OvenRef,
      nullable: true,
      description: 'The oven; null for a hygrometer.',
      resolve: ({ ovenId }, _, { load }) => (ovenId ? load.oven.load(ovenId) : null),
    }),
    sensor: t.field({
      type: SensorRef,
      nullable: true,
      description: 'The hygrometer; null for an oven.',
      resolve: ({ sensorId }, _, { load }) => (sensorId ? load.sensor.load(sensorId) : null),
    }),
    at: t.expose('at', { type: 'DateTime', description: 'When, or from when.' }),
    until: t.expose('until', {
      type: 'DateTime',
      nullable: true,
      description: 'Out of order or baked out until; null while nobody knows, and for the rest.',
    }),
    setValue: t.exposeFloat('setValue', {
      nullable: true,
      description: 'What it was set to, showed, or should show over the salt: °C, mbar or % RH.',
    }),
    foundValue: t.exposeFloat('foundValue', { nullable: true, description: 'What was found: °C, mbar or % RH.' }),
    offset: t.float({
      nullable: true,
      description: 'Found less set: °C, mbar or % RH; null where there is no figure.',
      resolve: (care) => offsetOf(care),
    }),
    salt: t.exposeString('salt', { nullable: true, description: 'The saturated salt of a hygrometer’s check.' }),
    temperatureC: t.exposeFloat('temperatureC', { nullable: true, description: 'Temperature over that salt, °C.' }),
    note: t.exposeString('note', { nullable: true, description: 'A note beside it.' }),
    person: t.field({
      type: PersonRef,
      nullable: true,
      description: 'Who noted it; null when nobody said.',
      resolve: ({ actorId }, _, { load }) => (actorId ? load.person.load(actorId) : null),
    }),
    takenBackAt: t.expose('takenBackAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back; null while it counts.',
    }),
    sentence: t.string({ description: 'The same in one sentence.', resolve: (care) => careSentence(care) }),
  }),
});

builder.node(OvenRef, {
  name: 'Oven',
  description: 'An oven: what fits in, how hot it gets, and when someone can load it.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.oven.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the lab.' }),
    kind: t.field({ type: OvenKindEnum, description: 'Air or vacuum.', resolve: ({ kind }) => kind }),
    room: t.field({
      type: RoomRef,
      description: 'The room it stands in, whose air it draws.',
      resolve: async ({ roomId }, _, { load }) => there(await load.room.load(roomId), 'room'),
    }),
    shelves: t.exposeInt('shelves', { description: 'How many shelves.' }),
    shelfAreaCm2: t.exposeFloat('shelfAreaCm2', { description: 'Area of one shelf, cm².' }),
    areaCm2: t.float({ description: 'Area of all shelves, cm².', resolve: (oven) => ovenAreaCm2(oven) }),
    shelfHeightMm: t.exposeFloat('shelfHeightMm', {
      description: 'Free height above a shelf, mm. Plates stand in racks where it is enough.',
    }),
    hasFan: t.exposeBoolean('hasFan', { description: 'Its air is stirred.' }),
    lowestC: t.exposeFloat('lowestC', { description: 'The lowest temperature it holds, °C.' }),
    highestC: t.exposeFloat('highestC', { description: 'The highest temperature it holds, °C.' }),
    heatMinutesPerC: t.exposeFloat('heatMinutesPerC', { description: 'To heat up, min per °C.' }),
    coolMinutesPerC: t.exposeFloat('coolMinutesPerC', { description: 'To cool down, min per °C.' }),
    doorMinutes: t.exposeInt('doorMinutes', { description: 'To unload before the next set-up, min.' }),
    pressureMbar: t.exposeFloat('pressureMbar', {
      nullable: true,
      description: 'Pressure under vacuum, mbar; null: 20 mbar are taken.',
    }),
    waterMbar: t.exposeFloat('waterMbar', {
      nullable: true,
      description: 'Water vapour in it without load, mbar; null: the usual.',
    }),
    pumpM3PerH: t.exposeFloat('pumpM3PerH', { nullable: true, description: 'Pumping speed, m³/h; null: not known.' }),
    isUnattended: t.exposeBoolean('isUnattended', { description: 'It may run while nobody is there.' }),
    hours: t.field({
      type: [HoursRef],
      description: 'When someone can load it: its own hours, else the lab’s working hours.',
      resolve: (oven, _, { lab }) => hoursOf(oven, lab),
    }),
    hasOwnHours: t.boolean({ description: 'These hours are its own.', resolve: (oven) => ownHours(oven) !== null }),
    removedAt: t.expose('removedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken out of use; null while it is used.',
    }),
    care: t.field({
      type: [OvenCareRef],
      description: 'Its care, newest first; what was taken back is left out.',
      resolve: async ({ id }, _, { load }) => load.careOfOven.load(id),
    }),
    outOfOrder: t.field({
      type: OvenCareRef,
      nullable: true,
      description: 'Why nothing may go in now; null when something may.',
      resolve: async ({ id }, _, { load, now }) => {
        const at = now();
        const care = await load.careOfOven.load(id);
        const isOut = ({ kind, at: from, until }: (typeof care)[number]) =>
          (kind === 'OUT_OF_ORDER' || (kind === 'BAKE_OUT' && until !== null)) && from <= at && (!until || until > at);
        return care.find(isOut) ?? null;
      },
    }),
  }),
});

builder.objectField(SensorRef, 'checks', (t) =>
  t.field({
    type: [OvenCareRef],
    description: 'When it was checked over a saturated salt, newest first.',
    resolve: ({ id }, _, { load }) => load.careOfSensor.load(id),
  }),
);
