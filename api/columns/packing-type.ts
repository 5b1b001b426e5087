// How a column was packed and conditioned, as its page shows it: read from the events that did it.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { Container, Event } from '../database/generated/sqlite/client.ts';
import { restMinutes } from '../science/columns/conditioning.ts';
import { columnVolumeMl } from '../science/columns/volumes.ts';
import { details, type DetailOf } from '../stock/service.ts';
import { ContainerRef, EventRef, PackingMethodEnum, there } from '../stock/schema.ts';

interface Packing {
  event: Event;
  column: Container;
  detail: DetailOf<'COLUMN_PACKED'>;
}

const packed = ({ detail }: Packing) => detail.packing;

const PackingRef = builder.objectRef<Packing>('ColumnPacking').implement({
  description: 'The record of a packing: of which lot, how wet, how much, how.',
  fields: (t) => ({
    event: t.field({ type: EventRef, description: 'The event.', resolve: ({ event }) => event }),
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ event }) => event.at }),
    from: t.field({
      type: ContainerRef,
      description: 'What it was packed from; its lot is the column’s.',
      resolve: async ({ event }, _, { load }) => there(await load.container.load(event.containerId), 'container'),
    }),
    dryGrams: t.float({ description: 'Dry sorbent, g.', resolve: ({ event }) => event.dryGrams ?? 0 }),
    asReceivedGrams: t.float({
      nullable: true,
      description: 'What the balance showed, g; null where it was said dry, or by the bed.',
      resolve: ({ detail }) => (detail.basis === 'AS_RECEIVED' ? detail.grams : null),
    }),
    waterFraction: t.float({
      nullable: true,
      description: 'Water of it then, by the estimate, kg per kg dry sorbent; null where nobody asked.',
      resolve: (of) => packed(of)?.waterFraction ?? of.detail.bookedWaterFraction,
    }),
    waterAssumed: t.boolean({
      description: 'That water was only assumed.',
      resolve: (of) => packed(of)?.waterAssumed ?? of.detail.waterAssumed,
    }),
    bedLengthMm: t.float({
      description: 'Length of the bed when it was done, mm.',
      resolve: ({ column }) => there(column.bedLengthMm, 'bed length'),
    }),
    densityKgPerM3: t.float({
      nullable: true,
      description: 'Dry sorbent per volume of the packed bed, kg/m³.',
      resolve: ({ event, column }) => {
        const litres = (column.volumeMl ?? 0) / 1000;
        return litres > 0 && event.dryGrams !== null ? event.dryGrams / litres : null;
      },
    }),
    method: t.field({
      type: PackingMethodEnum,
      nullable: true,
      description: 'Dry or as a slurry; null when nobody said.',
      resolve: (of) => packed(of)?.method ?? null,
    }),
    tapping: t.string({
      nullable: true,
      description: 'How it was tapped or settled; null when nobody said.',
      resolve: (of) => packed(of)?.tapping ?? null,
    }),
    flowMlPerMin: t.float({
      nullable: true,
      description: 'Flow that it was settled at, mL/min; null when nobody said.',
      resolve: (of) => packed(of)?.flowMlPerMin ?? null,
    }),
    pressureBar: t.float({
      nullable: true,
      description: 'Pressure that it was settled at, bar; null when nobody said.',
      resolve: (of) => packed(of)?.pressureBar ?? null,
    }),
    packer: t.string({
      nullable: true,
      description: 'Who packed it; null when nobody said.',
      resolve: (of) => packed(of)?.packer ?? null,
    }),
    dyeTest: t.string({
      nullable: true,
      description: 'What a dye or another test of the packing showed; null when nobody said.',
      resolve: (of) => packed(of)?.dyeTest ?? null,
    }),
  }),
});

interface Conditioning {
  event: Event;
  detail: DetailOf<'CONDITIONED'>;
}

const ConditioningRef = builder.objectRef<Conditioning>('ColumnConditioning').implement({
  description: 'A column was wetted with its mobile phase.',
  fields: (t) => ({
    event: t.field({ type: EventRef, description: 'The event.', resolve: ({ event }) => event }),
    at: t.field({ type: 'DateTime', description: 'When.', resolve: ({ event }) => event.at }),
    mobilePhase: t.string({
      nullable: true,
      description: 'With what; null when nobody said.',
      resolve: ({ detail }) => detail.mobilePhase,
    }),
    columnVolumes: t.float({
      nullable: true,
      description: 'How many column volumes; null when nobody said.',
      resolve: ({ detail }) => detail.columnVolumes,
    }),
    minutes: t.float({
      nullable: true,
      description: 'For how long, min; null when nobody said.',
      resolve: ({ detail }) => detail.minutes ?? null,
    }),
    flowMlPerMin: t.float({
      nullable: true,
      description: 'Flow, mL/min; null when nobody said.',
      resolve: ({ detail }) => detail.flowMlPerMin ?? null,
    }),
  }),
});

async function conditioningsOf({ database }: Context, columnId: string): Promise<Conditioning[]> {
  const events = await database.read.event.findMany({
    where: { containerId: columnId, type: 'CONDITIONED', stands: true },
    orderBy: [{ at: 'asc' }, { place: 'asc' }],
  });
  return events.map((event) => ({ event, detail: details.CONDITIONED.parse(event.detail) }));
}

async function classOf({ lotId }: Container, { load }: Context): Promise<string> {
  const lot = there(await load.lot.load(lotId), 'lot');
  return there(await load.sorbent.load(lot.sorbentId), 'sorbent').sorbentClass;
}

builder.interfaceFields(ContainerRef, (t) => ({
  packing: t.field({
    type: PackingRef,
    nullable: true,
    description: 'Of a column: how it was packed; null of everything else.',
    resolve: async (column, _, { database }) => {
      if (column.kind !== 'COLUMN') return null;
      const event = await database.read.event.findFirst({
        where: { otherContainerId: column.id, type: 'COLUMN_PACKED', stands: true },
      });
      return event && { event, column, detail: details.COLUMN_PACKED.parse(event.detail) };
    },
  }),
  conditionings: t.field({
    type: [ConditioningRef],
    description: 'Of a column: when it was wetted with mobile phase, oldest first; empty of everything else.',
    resolve: (column, _, context) => (column.kind === 'COLUMN' ? conditioningsOf(context, column.id) : []),
  }),
  columnVolumeMl: t.float({
    nullable: true,
    description: 'Of a column: liquid in its packed bed, mL; null of everything else.',
    resolve: async (column, _, context) => {
      const { kind, innerDiameterMm, bedLengthMm } = column;
      if (kind !== 'COLUMN' || innerDiameterMm === null || bedLengthMm === null) return null;
      return columnVolumeMl(innerDiameterMm, bedLengthMm, await classOf(column, context));
    },
  }),
  restsUntil: t.field({
    type: 'DateTime',
    nullable: true,
    description:
      'Of an alumina column: until when it rests after its first wetting, by the default; null of everything else.',
    resolve: async (column, _, context) => {
      const { kind, wettedAt, innerDiameterMm } = column;
      if (kind !== 'COLUMN' || !wettedAt || innerDiameterMm === null) return null;
      if ((await classOf(column, context)) !== 'alumina') return null;
      return new Date(wettedAt.getTime() + restMinutes(innerDiameterMm) * 60_000);
    },
  }),
}));
