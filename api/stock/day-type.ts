// What a screen asks first: the day in figures, and a whole list in its order.
import { builder } from '../builder.ts';
import { dayOf, platesByRegime, type PlatesReady } from '../database/day.ts';
import type { ExposureState } from '../database/generated/sqlite/client.ts';
import { ExposureStateEnum, PlateRegimeEnum } from './enums.ts';
import { placedContainers } from './list.ts';
import { FilterInput } from './queries.ts';
import { DayRef } from './refs.ts';

const PlatesReadyRef = builder.objectRef<PlatesReady>('PlatesReady').implement({
  description: 'Plates that are ready in one regime.',
  fields: (t) => ({
    regime: t.field({
      type: PlateRegimeEnum,
      nullable: true,
      description: 'How they are kept; null for plates that nobody prepared, within their band as they came.',
      resolve: ({ regime }) => regime,
    }),
    plates: t.exposeInt('plates', { description: 'How many.' }),
    until: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When the first of them leaves its band as it stands; null when none does in sight.',
      resolve: ({ until }) => (until === null ? null : new Date(until)),
    }),
  }),
});

DayRef.implement({
  description: 'What the day asks for, in figures. Open means that the seal is broken, whatever the lid does now.',
  fields: (t) => ({
    inUse: t.exposeInt('inUse', { description: 'Containers that hold something still, opened or not.' }),
    open: t.exposeInt('open', { description: 'Those of them that are open.' }),
    redry: t.exposeInt('redry', { description: 'Open ones to redry first.' }),
    useSoon: t.exposeInt('useSoon', { description: 'Open ones to use soon.' }),
    weighFirst: t.exposeInt('weighFirst', { description: 'Open ones of which nobody knows the water.' }),
    tooDry: t.exposeInt('tooDry', { description: 'Open ones that are drier than wanted.' }),
    good: t.exposeInt('good', { description: 'Open ones that are good to use.' }),
    platesReady: t.exposeInt('platesReady', { description: 'Plates within their band, in boxes opened or not.' }),
    platesReadyUntil: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When the first of these leaves its band as it stands; null when none does in sight.',
      resolve: ({ platesReadyUntil: ms }) => (ms === null ? null : new Date(ms)),
    }),
    platesByRegime: t.field({
      type: [PlatesReadyRef],
      description: 'The ready plates by how they are kept; regimes without any are left out.',
      resolve: (_, __, { database, lab }) => platesByRegime(database, lab.id),
    }),
    platesWet: t.exposeInt('platesWet', {
      description: 'Plates that are wet with solvent, in the tank or drying in the hood.',
    }),
    platesToRedry: t.exposeInt('platesToRedry', { description: 'Plates past their band.' }),
    waiting: t.exposeInt('waiting', { description: 'Requests on the list of what is to be dried.' }),
  }),
});

interface InState {
  state: ExposureState;
  labels: string[];
}

const InStateRef = builder.objectRef<InState>('ContainersInState').implement({
  description: 'The containers of a list that are in one state, as labels.',
  fields: (t) => ({
    state: t.field({ type: ExposureStateEnum, description: 'The state.', resolve: ({ state }) => state }),
    labels: t.exposeStringList('labels', { description: 'Their labels, most urgent first.' }),
  }),
});

builder.queryFields((t) => ({
  day: t.field({
    type: DayRef,
    description: 'What the day asks for, in figures.',
    resolve: (_, __, { database, lab }) => dayOf(database, lab.id),
  }),
  containersByState: t.field({
    type: [InStateRef],
    description:
      'All containers of a filter as labels, in the order of urgency and by state; states without any are left out. Their lines are asked by `labels`.',
    args: { filter: t.arg({ type: FilterInput, description: 'Which ones; all when not given.' }) },
    complexity: 50,
    resolve: async (_, { filter }, context) => {
      const groups = new Map<ExposureState, string[]>();
      for (const { label, state } of await placedContainers(context, filter ?? {})) {
        const group = groups.get(state);
        if (group) group.push(label);
        else groups.set(state, [label]);
      }
      return [...groups].map(([state, labels]) => ({ state, labels }));
    },
  }),
}));
