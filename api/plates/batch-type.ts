// Batches of prepared plates as GraphQL shows them.
import { builder } from '../builder.ts';
import { RoomRef } from '../climate/refs.ts';
import type { Prepared } from '../stock/service.ts';
import { ContainerRef, FrontEdgeEnum, PlateRegimeEnum, PrewashDirectionEnum } from '../stock/schema.ts';
import type { Context } from '../context.ts';
import { sentenceOf, useWithin, withinWords, type Batch, type UseWithin } from './service.ts';
import { regimeWords } from './rules.ts';
import { withinSource } from './within.ts';

export const BatchStateEnum = builder.enumType('PlateBatchState', {
  description: 'Where a batch of plates is between the tank and the bench.',
  values: {
    WET: { description: 'Wet with solvent: in the tank, or nobody said that it hangs in the hood.' },
    DRYING: { description: 'Drying in the hood, until the solvent is recorded as gone.' },
    DRY: { description: 'Dry of solvent, neither activated nor equilibrated since.' },
    ACTIVATED: { description: 'Activated in an oven: dry until spotted.' },
    EQUILIBRATED: { description: 'Equilibrated at one humidity.' },
  },
});

type Step<N extends keyof Prepared> = NonNullable<Prepared[N]>;

/** Who wrote a step down. */
const writtenBy = async (eventId: string, { load }: Context): Promise<string | null> => {
  const event = await load.event.load(eventId);
  const person = event?.actorId ? await load.person.load(event.actorId) : null;
  return person?.shortName ?? null;
};

const PreWashRef = builder.objectRef<Step<'preWash'>>('PreWash').implement({
  description: 'A pre-wash of plates.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who wrote it down, by short name; null when nobody said.',
      resolve: ({ eventId }, _, context) => writtenBy(eventId, context),
    }),
    solvent: t.exposeString('solvent', { nullable: true, description: 'Which solvent; null when nobody said.' }),
    direction: t.field({
      type: PrewashDirectionEnum,
      nullable: true,
      description: 'Which way it ran; null when nobody said.',
      resolve: ({ direction }) => direction,
    }),
    fullLength: t.exposeBoolean('fullLength', {
      nullable: true,
      description: 'It ran the full length of the plate; null when nobody said.',
    }),
    frontEdge: t.field({
      type: FrontEdgeEnum,
      nullable: true,
      description: 'What became of the dirty edge at its front; null when nobody said.',
      resolve: ({ frontEdge }) => frontEdge,
    }),
    isMobilePhase: t.exposeBoolean('isMobilePhase', {
      description: 'It was the mobile phase of the extraction that they are for.',
    }),
    tankLoads: t.exposeInt('tankLoads', { nullable: true, description: 'Tank loads; null when nobody said.' }),
    mlPerLoad: t.exposeFloat('mlPerLoad', {
      nullable: true,
      description: 'Solvent of each load, mL; null when nobody said.',
    }),
  }),
});

const SolventGoneRef = builder.objectRef<Step<'solventGone'>>('SolventGone').implement({
  description: 'The solvent was recorded as gone.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who saw to it, or wrote it down; null when nobody said.',
      resolve: ({ eventId, seenBy }, _, context) => seenBy ?? writtenBy(eventId, context),
    }),
  }),
});

const ActivationRef = builder.objectRef<Step<'activation'>>('PlateActivation').implement({
  description: 'Plates were activated in an oven.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When they came out.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who wrote it down; null when nobody said.',
      resolve: ({ eventId }, _, context) => writtenBy(eventId, context),
    }),
    temperatureC: t.exposeFloat('temperatureC', { nullable: true, description: 'At what, °C; null when nobody said.' }),
    minutes: t.exposeFloat('minutes', { nullable: true, description: 'For how long, min; null when nobody said.' }),
    vacuum: t.exposeBoolean('vacuum', { description: 'Under vacuum.' }),
    oven: t.exposeString('oven', { nullable: true, description: 'In which oven; null when nobody said.' }),
  }),
});

const EquilibrationRef = builder.objectRef<Step<'equilibration'>>('PlateEquilibration').implement({
  description: 'Plates were equilibrated at one humidity.',
  fields: (t) => ({
    at: t.field({ type: 'DateTime', description: 'When they were done.', resolve: ({ at }) => new Date(at) }),
    by: t.string({
      nullable: true,
      description: 'Who wrote it down; null when nobody said.',
      resolve: ({ eventId }, _, context) => writtenBy(eventId, context),
    }),
    humidityPercent: t.exposeFloat('humidityPercent', { description: 'At what relative humidity, %.' }),
    temperatureC: t.exposeFloat('temperatureC', { description: 'At what temperature, °C.' }),
    over: t.exposeString('over', {
      nullable: true,
      description: 'Over which saturated salt, or in which room; null when nobody said.',
    }),
    hours: t.exposeFloat('hours', { nullable: true, description: 'For how long, h; null when nobody said.' }),
  }),
});

export const UseWithinRef = builder.objectRef<UseWithin>('UseWithin').implement({
  description: 'How long plates last once they are taken out into a room, by the model.',
  fields: (t) => ({
    room: t.field({ type: RoomRef, description: 'In which room.', resolve: ({ room }) => room }),
    minutes: t.exposeFloat('minutes', {
      nullable: true,
      description: 'Minutes until the layer leaves its band there; 0 when it has, null when it stays in it.',
    }),
    humidityPercent: t.float({
      description: 'Relative humidity of the room’s air that was reckoned with, %.',
      resolve: ({ air }) => air.humidityPercent,
    }),
    temperatureC: t.float({ description: 'Its temperature, °C.', resolve: ({ air }) => air.temperatureC }),
    sentence: t.string({
      description: 'It in words, such as `use within 4 min in wet bench at 46 % RH`.',
      resolve: withinWords,
    }),
    source: t.string({ description: 'Where the minutes come from.', resolve: () => withinSource }),
  }),
});

export const PlateBatchRef = builder.objectRef<Batch>('PlateBatch').implement({
  description: 'Plates that were prepared together and stand on the shelf under one label.',
  fields: (t) => ({
    label: t.string({ description: 'Its label.', resolve: ({ container }) => container.label }),
    container: t.field({ type: ContainerRef, description: 'The box.', resolve: ({ container }) => container }),
    state: t.field({ type: BatchStateEnum, description: 'Where it is.', resolve: ({ state }) => state }),
    regime: t.field({
      type: PlateRegimeEnum,
      nullable: true,
      description: 'How they are kept until spotted; null while they are not ready for it.',
      resolve: ({ regime }) => regime,
    }),
    regimeWords: t.string({
      nullable: true,
      description: 'The regime in words, such as `equilibrated at 45 % RH`; null without one.',
      resolve: ({ regime, container }) => regime && regimeWords(regime, container.regimeHumidityPercent),
    }),
    humidityPercent: t.float({
      nullable: true,
      description: 'The air that they were equilibrated in, % RH; null of every other regime.',
      resolve: ({ container }) => container.regimeHumidityPercent,
    }),
    preparedAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When they were activated or equilibrated; null while they are neither.',
      resolve: ({ container }) => container.preparedAt,
    }),
    ready: t.exposeBoolean('ready', { description: 'They can be spotted now.' }),
    whyNot: t.string({
      nullable: true,
      description: 'Why they cannot be spotted now; null when they can.',
      resolve: ({ whyNot }) => whyNot || null,
    }),
    goodUntil: t.expose('goodUntil', {
      type: 'DateTime',
      nullable: true,
      description: 'Until when they are good as they stand; null when they are not ready, or no end is in sight.',
    }),
    plates: t.int({ description: 'Plates left.', resolve: ({ container }) => container.plates ?? 0 }),
    solventWetAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'Since when they are wet with solvent; null while they are not.',
      resolve: ({ container }) => container.wettedAt,
    }),
    inHoodAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'Wet ones: when they were set in the hood, or will be when the tank is done; null when nobody said.',
      resolve: ({ container }) => container.hoodAt,
    }),
    solventGoneFrom: t.expose('solventGoneFrom', {
      type: 'DateTime',
      nullable: true,
      description: 'When recordSolventGone is taken at the earliest; null while they are not wet.',
    }),
    preWash: t.field({
      type: PreWashRef,
      nullable: true,
      description: 'The last pre-wash; null without one.',
      resolve: ({ of }) => of?.preWash ?? null,
    }),
    solventGone: t.field({
      type: SolventGoneRef,
      nullable: true,
      description: 'When its solvent was gone; null while it is not.',
      resolve: ({ of }) => of?.solventGone ?? null,
    }),
    activation: t.field({
      type: ActivationRef,
      nullable: true,
      description: 'The last activation since they were wet; null without one.',
      resolve: ({ of }) => of?.activation ?? null,
    }),
    equilibration: t.field({
      type: EquilibrationRef,
      nullable: true,
      description: 'The last equilibration since they were activated; null without one.',
      resolve: ({ of }) => of?.equilibration ?? null,
    }),
    usableForExtraction: t.boolean({
      description:
        'Pre-washed with the mobile phase of the extraction, full length, dirty edge out of the way, and not wet.',
      resolve: ({ use }) => use.extraction,
    }),
    usableFor: t.string({
      description: 'What extraction they are for, or why they are for none.',
      resolve: ({ use }) => use.why,
    }),
    useWithin: t.field({
      type: [UseWithinRef],
      complexity: 30,
      args: { room: t.arg.string({ description: 'Name of a room; each room that people work in when not given.' }) },
      description: 'How long they last once taken out; empty where nothing can be said.',
      resolve: ({ container }, { room }, context) => useWithin(context, container.id, room),
    }),
    sentence: t.string({
      description: 'It in one sentence, such as `12 plates dry until spotted; good until 3 Mar 14:00`.',
      resolve: (batch, _, context) => sentenceOf(context, batch),
    }),
  }),
});
