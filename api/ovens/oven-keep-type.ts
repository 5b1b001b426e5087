// Mutations on ovens and their care.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { addMutation } from '../mutation.ts';
import { fresh, LabRef, there } from '../stock/schema.ts';
import { apartSaid, apartSet } from './apart-set.ts';
import { careBackSaid, careSaid, endSaid } from './care-said.ts';
import { careEnded, careTakenBack } from './care-back.ts';
import { careRecorded, type CareKept } from './care.ts';
import { OvenCareKindEnum, OvenKindEnum } from './oven-type.ts';
import { ovenAdded } from './oven-added.ts';
import { ovenRemoved, ovenRestored } from './oven-removed.ts';
import { addOvenSaid, ovenSaid, setOvenSaid } from './oven-said.ts';
import { ovenSet } from './oven-set.ts';
import type { OvenKept as Kept } from './ovens.ts';
import { FamilyEnum } from './plan-type.ts';
import { OvenCareRef, OvenRef } from './refs.ts';

const OvenKept = builder.objectRef<Kept>('OvenKept').implement({
  description: 'An oven was added, changed, removed or put back. Plans that it touches are due.',
  fields: (t) => ({
    oven: t.field({
      type: OvenRef,
      description: 'The oven as it now stands.',
      resolve: async ({ ovenId }, _, { load }) => there(await load.oven.load(ovenId), 'oven'),
    }),
  }),
});

const CareKeptRef = builder.objectRef<CareKept>('OvenCareKept').implement({
  description: 'Something was noted of an oven or a hygrometer, or taken back.',
  fields: (t) => ({
    care: t.field({
      type: OvenCareRef,
      description: 'What was noted.',
      resolve: async ({ careId }, _, { load }) => there(await load.ovenCare.load(careId), 'oven care'),
    }),
  }),
});

const ApartKept = builder.objectRef<{ labId: string }>('OvensApartKept').implement({
  description: 'What may not share an oven was set.',
  fields: (t) => ({
    lab: t.field({ type: LabRef, description: 'The lab.', resolve: (_, __, { lab }) => lab }),
  }),
});

type Fields = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0];

const HoursInput = builder.inputType('OvenHoursInput', {
  description: 'Hours on some days, on the lab’s own clock.',
  fields: (t) => ({
    days: t.intList({ required: true, description: 'Days, Monday 1 to Sunday 7.' }),
    from: t.string({ required: true, description: 'From, such as `07:00`.' }),
    to: t.string({ required: true, description: 'To, such as `19:00`; before `from` it is that of the next day.' }),
  }),
});

const ovenFields = (t: Fields, isNew: boolean) => ({
  name: t.string({ required: isNew, description: 'Its name, once in the lab.' }),
  kind: t.field({ type: OvenKindEnum, required: isNew, description: 'Air or vacuum.' }),
  room: t.string({ required: isNew, description: 'Name of the room it stands in.' }),
  shelves: t.int({ required: isNew, description: 'How many shelves.' }),
  shelfAreaCm2: t.float({ required: isNew, description: 'Area of one shelf, cm².' }),
  lowestC: t.float({ required: isNew, description: 'The lowest temperature it holds, °C.' }),
  highestC: t.float({ required: isNew, description: 'The highest temperature it holds, °C.' }),
  shelfHeightMm: t.float({ required: isNew, description: 'Free height above a shelf, mm.' }),
  hasFan: t.boolean({ description: 'Its air is stirred.' }),
  heatMinutesPerC: t.float({ description: 'To heat up, min per °C; 0.5 when nobody said.' }),
  coolMinutesPerC: t.float({ description: 'To cool down, min per °C; 1 when nobody said.' }),
  doorMinutes: t.int({ description: 'To unload before the next set-up, min; 5 when nobody said.' }),
  pressureMbar: t.float({ description: 'Pressure under vacuum, mbar.' }),
  waterMbar: t.float({ description: 'Water vapour in it without load, mbar.' }),
  pumpM3PerH: t.float({ description: 'Pumping speed, m³/h; with it the vapour of many wet trays slows their drying.' }),
  isUnattended: t.boolean({ description: 'It may run while nobody is there; it may when nobody said.' }),
  hours: t.field({
    type: [HoursInput],
    description: 'When someone can load it; null: the lab’s working hours.',
  }),
});

const kept = (context: Context, done: Promise<Kept>) => fresh(context, done);

addMutation('addOven', {
  description: 'Adds an oven.',
  check: addOvenSaid,
  success: OvenKept,
  run: (input, context) => kept(context, ovenAdded(context, input)),
  fields: (t) => ovenFields(t, true),
});

addMutation('setOven', {
  description: 'Changes an oven; what is not given stays.',
  check: setOvenSaid,
  success: OvenKept,
  run: (input, context) => kept(context, ovenSet(context, input)),
  fields: (t) => ({ oven: t.id({ required: true, description: 'Which oven.' }), ...ovenFields(t, false) }),
});

addMutation('removeOven', {
  description: 'Takes an oven out of use. Its runs and its care stay; `restoreOven` puts it back.',
  check: ovenSaid,
  success: OvenKept,
  run: (input, context) => kept(context, ovenRemoved(context, input)),
  fields: (t) => ({ oven: t.id({ required: true, description: 'Which oven.' }) }),
});

addMutation('restoreOven', {
  description: 'Puts a removed oven back into use.',
  check: ovenSaid,
  success: OvenKept,
  run: (input, context) => kept(context, ovenRestored(context, input)),
  fields: (t) => ({ oven: t.id({ required: true, description: 'Which oven.' }) }),
});

addMutation('setOvensApart', {
  description: 'Sets which families may not share an oven.',
  check: apartSaid,
  success: ApartKept,
  run: (input, context) => fresh(context, apartSet(context, input)),
  fields: (t) => ({
    pairs: t.field({
      type: t.listRef(t.listRef(FamilyEnum)),
      description: 'Pairs of families; null puts common practice back.',
    }),
  }),
});

addMutation('recordOvenCare', {
  description:
    'Notes what was checked, renewed or found broken of an oven, or a hygrometer’s check over a saturated salt, whose offset is worked out.',
  check: careSaid,
  success: CareKeptRef,
  run: (input, context) => fresh(context, careRecorded(context, input)),
  fields: (t) => ({
    kind: t.field({ type: OvenCareKindEnum, required: true, description: 'What was looked after.' }),
    oven: t.id({ description: 'The oven; none for a hygrometer.' }),
    room: t.string({ description: 'Of a hygrometer: the room it stands in.' }),
    sensor: t.string({ description: 'Of a hygrometer: its name there.' }),
    at: t.field({ type: 'DateTime', description: 'When, or from when; now when not given.' }),
    until: t.field({ type: 'DateTime', description: 'Out of order or baked out until; open when not given.' }),
    setValue: t.float({ description: 'The set temperature, °C, or what its gauge showed, mbar.' }),
    foundValue: t.float({
      description: 'The true temperature, °C, or pressure, mbar; what a hygrometer showed, % RH.',
    }),
    salt: t.string({ description: 'Of a hygrometer: the saturated salt, such as `magnesium chloride`.' }),
    temperatureC: t.float({ description: 'Of a hygrometer: temperature over the salt, °C; 25 when not given.' }),
    note: t.string({ description: 'A note beside it.' }),
  }),
});

addMutation('endOvenCare', {
  description: 'Says that an oven works again: what was out of order or baked out ends.',
  check: endSaid,
  success: CareKeptRef,
  run: (input, context) => fresh(context, careEnded(context, input)),
  fields: (t) => ({
    care: t.id({ required: true, description: 'What was noted.' }),
    at: t.field({ type: 'DateTime', description: 'When; now when not given.' }),
  }),
});

const careField = (t: Fields) => ({ care: t.id({ required: true, description: 'What was noted.' }) });

addMutation('takeOvenCareBack', {
  description: 'Takes back something noted of an oven or a hygrometer.',
  check: careBackSaid,
  success: CareKeptRef,
  run: (input, context) => fresh(context, careTakenBack(context, input, true)),
  fields: careField,
});

addMutation('restoreOvenCare', {
  description: 'Lets something that was taken back count again.',
  check: careBackSaid,
  success: CareKeptRef,
  run: (input, context) => fresh(context, careTakenBack(context, input, false)),
  fields: careField,
});
