// A container as GraphQL shows it, whatever its kind.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { RoomRef } from '../climate/refs.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import { ClosureEnum, ContainerKindEnum, ScoopingEnum } from './enums.ts';
import { freeDryGrams } from './hold.ts';
import type { Listed } from './list.ts';
import { ContainerRef, HoldRef, LotRef, SorbentRef, there, VesselRef } from './refs.ts';
import { certificateWater } from './water.ts';
import { bedDepthMm } from './depth.ts';
import { habit } from './details.ts';

export const typeNames = { DRUM: 'Drum', PORTION: 'Portion', PLATE_BOX: 'PlateBox', COLUMN: 'Column' } as const;

const HabitRef = builder.objectRef<{ timesADay: number; minutes: number }>('Habit').implement({
  description: 'How often a container is opened on a working day, until somebody says otherwise.',
  fields: (t) => ({
    timesADay: t.exposeFloat('timesADay', { description: 'Openings a day.' }),
    minutes: t.exposeFloat('minutes', { description: 'Minutes of each opening.' }),
  }),
});

const mm = (key: 'innerDiameterMm' | 'heightMm' | 'mouthDiameterMm') => (container: Container) => container[key];

async function sorbentOf({ lotId }: Container, load: Context['load']) {
  const { sorbentId } = there(await load.lot.load(lotId), 'lot');
  return there(await load.sorbent.load(sorbentId), 'sorbent');
}

ContainerRef.implement({
  description:
    'Anything that holds sorbent and can take up water: a drum, a portion, a plate box or a column. How it stands now follows from its timeline.',
  interfaces: [builder.nodeInterfaceRef()],
  resolveType: (container) => typeNames[container.kind],
  fields: (t) => ({
    label: t.exposeString('label', {
      description: 'Its short code, such as `4M7-2XK`; the last sign checks the others.',
    }),
    oldCode: t.exposeString('oldCode', {
      nullable: true,
      description: 'What the lab called it before: the code of its old label or list. `search` finds it by it.',
    }),
    kind: t.field({ type: ContainerKindEnum, description: 'What holds the sorbent.', resolve: ({ kind }) => kind }),
    lot: t.field({
      type: LotRef,
      description: 'The lot its sorbent is of.',
      resolve: (container: Listed, _, { load }) =>
        container.lot ?? load.lot.load(container.lotId).then((lot) => there(lot, 'lot')),
    }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent in it.',
      resolve: (container: Listed, _, { load }) => container.sorbent ?? sorbentOf(container, load),
    }),
    room: t.field({
      type: RoomRef,
      description: 'Where it stands now.',
      resolve: (container: Listed, _, { load }) =>
        container.room ?? load.room.load(container.roomId).then((room) => there(room, 'room')),
    }),
    vessel: t.field({
      type: VesselRef,
      nullable: true,
      description: 'The listed vessel whose sizes it has; null when it has sizes of its own.',
      resolve: ({ vesselId }, _, { load }) => (vesselId ? load.vessel.load(vesselId) : null),
    }),
    takenFrom: t.field({
      type: ContainerRef,
      nullable: true,
      description: 'The container it was poured, taken or packed from; null for what came in.',
      resolve: ({ takenFromId }, _, { load }) => (takenFromId ? load.container.load(takenFromId) : null),
    }),
    portions: t.field({
      type: [ContainerRef],
      description: 'What was poured, taken or packed from it, oldest first.',
      resolve: ({ id }, _, { load }) => load.portions.load(id),
    }),
    isOpen: t.exposeBoolean('isOpen', { description: 'It stands open now.' }),
    openedAt: t.expose('openedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'Since when it stands open; null while closed.',
    }),
    closure: t.field({
      type: ClosureEnum,
      description: 'How its mouth stands now.',
      resolve: ({ closure }) => closure,
    }),
    usualClosure: t.field({
      type: ClosureEnum,
      description: 'How it is closed when nobody says otherwise.',
      resolve: ({ usualClosure }) => usualClosure,
    }),
    cameInAt: t.expose('cameInAt', { type: 'DateTime', description: 'When it came in or was filled.' }),
    finishedAt: t.expose('finishedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was used up, discarded or emptied; null while it holds something.',
    }),
    dryGrams: t.exposeFloat('dryGrams', { description: 'Dry sorbent in it, g. For plates, that of their layers.' }),
    dryGramsAssumed: t.exposeBoolean('dryGramsAssumed', {
      description: 'The dry grams rest on an assumed starting water: the certificate’s maximum, else 3 %.',
    }),
    freeDryGrams: t.float({ description: 'Dry sorbent in it that is not kept for anybody, g.', resolve: freeDryGrams }),
    asReceivedGrams: t.float({
      description:
        'What the balance would show now: dry grams with the estimated water in them (or, where that is unknown, the water they were booked with), g.',
      resolve: async (container, _, { load }) => {
        const exposure = (container as Listed).exposure ?? (await load.exposure.load(container.id));
        const known = exposure?.meanWaterFraction ?? null;
        if (known !== null) return container.dryGrams * (1 + known);
        const lot = there(await load.lot.load(container.lotId), 'lot');
        return container.dryGrams * (1 + certificateWater(lot).waterFraction);
      },
    }),
    habit: t.field({
      type: HabitRef,
      nullable: true,
      description: 'How often it is opened as a habit; null when it has none.',
      resolve: (container) => habit.nullable().parse(container.habit),
    }),
    scooping: t.field({
      type: ScoopingEnum,
      description: 'How one scoops from it.',
      resolve: ({ scooping }) => scooping,
    }),
    touchedSolventAt: t.expose('touchedSolventAt', {
      type: 'DateTime',
      nullable: true,
      description:
        'When it first touched solvent or sample; null when it never did. Such sorbent never goes to the oven.',
    }),
    solventWetAt: t.expose('wettedAt', {
      type: 'DateTime',
      nullable: true,
      description:
        'Since when it is wet with solvent: plates after a pre-wash, a column with its mobile phase; null while it is not. Solvent-wet plates go into no oven.',
    }),
    tareGrams: t.exposeFloat('tareGrams', {
      nullable: true,
      description: 'Weight of the empty vessel, g; null when not known.',
    }),
    innerDiameterMm: t.float({ nullable: true, description: 'Inner diameter, mm.', resolve: mm('innerDiameterMm') }),
    heightMm: t.float({ nullable: true, description: 'Inner height, mm.', resolve: mm('heightMm') }),
    mouthDiameterMm: t.float({
      nullable: true,
      description: 'Diameter of the mouth, mm.',
      resolve: mm('mouthDiameterMm'),
    }),
    volumeMl: t.exposeFloat('volumeMl', { nullable: true, description: 'Inner volume, mL.' }),
    bedDepthMm: t.float({
      nullable: true,
      description:
        'Depth of the sorbent now, mm, from its dry grams and bulk density; null for plates and where the density is not known.',
      resolve: (container, _, { load }) => bedDepthMm(container, load),
    }),
    holds: t.field({
      type: [HoldRef],
      description: 'What of it is kept for somebody, oldest first.',
      resolve: ({ id }, _, { load }) => load.holds.load(id),
    }),
  }),
});
