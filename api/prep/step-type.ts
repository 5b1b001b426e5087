// A step on the way to a need, as GraphQL shows it.
import { builder } from '../builder.ts';
import { goneFromMs, leastHoodHoursOf } from '../stock/service.ts';
import { ContainerRef, PersonRef } from '../stock/refs.ts';
import { cautionsSaid } from './cautions.ts';
import { detailOf } from './detail.ts';
import { PrepStepKindEnum, WasteStreamEnum } from './enums.ts';
import { NeedRef, PrepStepRef } from './refs.ts';
import { labelOf, sayStep } from './words.ts';
import { saidTime } from './hours.ts';

const LiquidRef = builder.objectRef<{ solvent: string; ml: number }>('PrepLiquid').implement({
  description: 'So much of a solvent.',
  fields: (t) => ({
    solvent: t.exposeString('solvent', { description: 'Its name.' }),
    ml: t.exposeFloat('ml', { description: 'Volume, mL.' }),
  }),
});

const WasteRef = builder.objectRef<{ stream: 'HALOGENATED' | 'NON_HALOGENATED'; ml: number }>('PrepWaste').implement({
  description: 'So much used solvent.',
  fields: (t) => ({
    stream: t.field({ type: WasteStreamEnum, description: 'Where it goes.', resolve: ({ stream }) => stream }),
    ml: t.exposeFloat('ml', { description: 'Volume, mL.' }),
  }),
});

const CautionRef = builder.objectRef<{ key: string; text: string }>('PrepCaution').implement({
  description: 'What to mind at a step.',
  fields: (t) => ({
    key: t.exposeString('key', { description: 'Its key, the same wherever it stands.' }),
    text: t.exposeString('text', { description: 'In words.' }),
  }),
});

builder.node(PrepStepRef, {
  name: 'PrepStep',
  description: 'A step on the way to a need: planned, or done.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.prepStep.load(id),
  fields: (t) => ({
    kind: t.field({ type: PrepStepKindEnum, description: 'What is done.', resolve: ({ kind }) => kind }),
    name: t.string({ description: 'Its name, such as `pre-wash, load 2 of 3`.', resolve: (step) => labelOf(step) }),
    sentence: t.string({
      description: 'What is done, in one sentence without time and place.',
      resolve: async (step, _, { load }) => sayStep(step, (await load.need.load(step.needId))?.forWhom ?? ''),
    }),
    need: t.field({
      type: NeedRef,
      description: 'What it is for.',
      resolve: async ({ needId }, _, { load }) => {
        const need = await load.need.load(needId);
        if (!need) throw new Error('need is gone');
        return need;
      },
    }),
    load: t.exposeInt('load', { description: 'Which load, from 1.' }),
    loads: t.exposeInt('loads', { description: 'Of how many.' }),
    startAt: t.expose('startAt', { type: 'DateTime', description: 'When it begins.' }),
    endAt: t.expose('endAt', { type: 'DateTime', description: 'When it ends.' }),
    isAttended: t.exposeBoolean('isAttended', { description: 'Somebody is there from its start to its end.' }),
    place: t.string({ description: 'Where.', resolve: ({ detail }) => detailOf(detail).place }),
    containers: t.field({
      type: [ContainerRef],
      description: 'What it is done with: what is kept for the need now.',
      resolve: async ({ needId }, _, { load }) => {
        const holds = await load.holdsOfNeed.load(needId);
        const all = await load.container.loadMany(holds.map(({ containerId }) => containerId));
        return all.flatMap((one) => (one && !(one instanceof Error) ? [one] : []));
      },
    }),
    plates: t.int({
      nullable: true,
      description: 'Plates in it; null for sorbent.',
      resolve: ({ detail }) => detailOf(detail).plates,
    }),
    dryGrams: t.float({
      nullable: true,
      description: 'Dry sorbent in it, g; null for plates.',
      resolve: ({ detail }) => detailOf(detail).dryGrams,
    }),
    mixture: t.string({
      nullable: true,
      description: 'Solvent or mobile phase; null where there is none.',
      resolve: ({ detail }) => detailOf(detail).mixture,
    }),
    solvents: t.field({
      type: [LiquidRef],
      description: 'What it takes of each solvent.',
      resolve: ({ detail }) => detailOf(detail).solvents,
    }),
    waste: t.field({
      type: [WasteRef],
      description: 'What it leaves, by stream.',
      resolve: ({ detail }) => detailOf(detail).waste,
    }),
    temperatureC: t.float({
      nullable: true,
      description: 'Temperature of the oven, °C.',
      resolve: ({ detail }) => detailOf(detail).temperatureC,
    }),
    minutes: t.float({
      nullable: true,
      description: 'Minutes in the oven, heating up included; or of conditioning.',
      resolve: ({ detail }) => detailOf(detail).minutes,
    }),
    isVacuum: t.boolean({
      nullable: true,
      description: 'Under vacuum.',
      resolve: ({ detail }) => detailOf(detail).isVacuum,
    }),
    depthMm: t.float({
      nullable: true,
      description: 'Deepest tray, mm.',
      resolve: ({ detail }) => detailOf(detail).depthMm,
    }),
    humidityPercent: t.float({
      nullable: true,
      description: 'Air that plates are equilibrated with, % RH; null in the room as it is.',
      resolve: ({ detail }) => detailOf(detail).humidityPercent,
    }),
    columnVolumes: t.float({
      nullable: true,
      description: 'Column volumes that it is conditioned with.',
      resolve: ({ detail }) => detailOf(detail).columnVolumes,
    }),
    flowMlPerMin: t.float({
      nullable: true,
      description: 'Flow, mL/min.',
      resolve: ({ detail }) => detailOf(detail).flowMlPerMin,
    }),
    diameterMm: t.float({
      nullable: true,
      description: 'Diameter of the column, mm.',
      resolve: ({ detail }) => detailOf(detail).diameterMm,
    }),
    bedLengthMm: t.float({
      nullable: true,
      description: 'Length of the bed, mm.',
      resolve: ({ detail }) => detailOf(detail).bedLengthMm,
    }),
    cautions: t.field({
      type: [CautionRef],
      description: 'What to mind, the most urgent first.',
      resolve: ({ detail }) => cautionsSaid(detailOf(detail).cautions),
    }),
    doneAt: t.expose('doneAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was done; null while it is open.',
    }),
    doneBy: t.field({
      type: PersonRef,
      nullable: true,
      description: 'Who ticked it; null when nobody said.',
      resolve: ({ doneById }, _, { load }) => (doneById ? load.person.load(doneById) : null),
    }),
    closedBecause: t.string({
      nullable: true,
      description: 'Why it cannot be ticked yet; null when it can. Solvent-wet plates keep the oven closed.',
      resolve: async (step, _, { load, lab, now }) => {
        if (step.doneAt) return null;
        const holds = await load.holdsOfNeed.load(step.needId);
        const all = await load.container.loadMany(holds.map(({ containerId }) => containerId));
        for (const one of all) {
          if (!one || one instanceof Error || one.kind !== 'PLATE_BOX' || !one.wettedAt) continue;
          const from = goneFromMs(one, leastHoodHoursOf(lab.settings));
          if (step.kind === 'AIR_DRY') {
            return now().getTime() < from
              ? `not before ${saidTime(new Date(from), lab.timeZone)}: the least time in the hood`
              : null;
          }
          if (step.kind !== 'PRE_WASH')
            return `${one.label} is wet with solvent: the air-drying is not recorded as finished`;
        }
        return null;
      },
    }),
    version: t.exposeInt('version', { description: 'Counts its changes.' }),
    changedAt: t.expose('changedAt', { type: 'DateTime', description: 'When it changed last.' }),
  }),
});
