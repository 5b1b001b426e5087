// The lines of a list, as GraphQL shows them: those understood and those left out.
import { builder } from '../builder.ts';
import { ClosureEnum, ContainerKindEnum } from '../stock/schema.ts';
import type { Row } from './line.ts';
import type { LeftOut } from './understood.ts';

export const RowRef = builder.objectRef<Row>('StockListRow').implement({
  description: 'A line of a list as it was understood.',
  fields: (t) => ({
    line: t.exposeInt('line', { description: 'Its line, as an editor or a spreadsheet numbers it.' }),
    sorbent: t.exposeString('sorbent', { description: 'The sorbent’s name.' }),
    supplier: t.exposeString('supplier', { nullable: true, description: 'The supplier’s name.' }),
    lotNumber: t.exposeString('lotNumber', { description: 'The lot number.' }),
    kind: t.field({ type: ContainerKindEnum, description: 'Drum or plate box.', resolve: ({ kind }) => kind }),
    count: t.exposeInt('count', { description: 'How many alike.' }),
    grams: t.exposeFloat('grams', { nullable: true, description: 'Sorbent in each, g as received.' }),
    plates: t.exposeInt('plates', { nullable: true, description: 'Plates in each.' }),
    vessel: t.exposeString('vessel', {
      nullable: true,
      description: 'The listed vessel it stands in; null with sizes of its own.',
    }),
    room: t.exposeString('room', { description: 'Where it stands.' }),
    receivedAt: t.expose('receivedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it came in; null for now.',
    }),
    openedAt: t.expose('openedAt', { type: 'DateTime', nullable: true, description: 'When it was first opened.' }),
    closure: t.field({
      type: ClosureEnum,
      nullable: true,
      description: 'How it is closed, where the list says so.',
      resolve: ({ closure }) => closure,
    }),
    oldCode: t.exposeString('oldCode', { nullable: true, description: 'The lab’s code for it until now.' }),
  }),
});

export const LeftOutRef = builder.objectRef<LeftOut>('StockListLeftOut').implement({
  description: 'A line that is not booked.',
  fields: (t) => ({
    line: t.exposeInt('line', { description: 'Its line.' }),
    why: t.exposeString('why', { description: 'Why not.' }),
  }),
});
