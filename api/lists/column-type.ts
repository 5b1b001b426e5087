// The columns of a list, as GraphQL shows them.
import { builder } from '../builder.ts';
import { fields, fieldWord, type Field } from './fields.ts';
import type { MatchedColumn } from './understood.ts';

export const FieldEnum = builder.enumType('StockListField', {
  description: 'What a column of a list says.',
  values: Object.fromEntries(
    fields.map((field) => [field, { value: field, description: `The ${fieldWord[field]}.` }]),
  ) as Record<Field, { value: Field; description: string }>,
});

export const ColumnRef = builder.objectRef<MatchedColumn>('StockListColumn').implement({
  description: 'A column of a list.',
  fields: (t) => ({
    column: t.exposeInt('column', { description: 'Its place, from 0.' }),
    heading: t.exposeString('heading', { description: 'Its heading; empty where there is none.' }),
    field: t.field({
      type: FieldEnum,
      nullable: true,
      description: 'What it is taken for; null when it is left out.',
      resolve: ({ field }) => field,
    }),
    samples: t.exposeStringList('samples', { description: 'Some of what stands in it.' }),
  }),
});
