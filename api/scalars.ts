// Scalars and the Refusal type, shared by all rooms.
import { GraphQLError, Kind } from 'graphql';
import { builder } from './builder.ts';
import { Refused, type Problem } from './errors.ts';

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:\d{2})$/;

function instant(value: unknown): Date {
  const date = typeof value === 'string' && ISO.test(value) ? new Date(value) : value instanceof Date ? value : null;
  if (!date || Number.isNaN(date.getTime())) {
    throw new GraphQLError(
      `invalid DateTime: ${String(value)}, an instant with its offset such as 2026-03-02T08:00:00Z`,
    );
  }
  return date;
}

builder.scalarType('DateTime', {
  description: 'An instant as ISO 8601 with offset, such as `2026-03-02T08:00:00Z`. Answers are in UTC.',
  serialize: (date) => instant(date).toISOString(),
  parseValue: instant,
  parseLiteral: (node) => instant(node.kind === Kind.STRING ? node.value : undefined),
});

builder.scalarType('JSON', {
  description: 'Plain JSON; its keys name their units.',
  serialize: (value) => value,
  parseValue: (value) => value,
});

export const ProblemRef = builder.objectRef<Problem>('Problem').implement({
  description: 'One thing that is wrong with one line of what was given.',
  fields: (t) => ({
    line: t.exposeInt('line', { nullable: true, description: 'Its line, as an editor or a spreadsheet numbers it.' }),
    column: t.exposeString('column', { nullable: true, description: 'The heading of its column.' }),
    value: t.exposeString('value', { description: 'What stands there, shortened.' }),
    message: t.exposeString('message', { description: 'What is wrong: `invalid x: v, …` and the like.' }),
    expected: t.exposeString('expected', { description: 'What would be right.' }),
  }),
});

builder.objectType(Refused, {
  name: 'Refusal',
  description: 'Something that cannot be done: what is wrong, where, and what would be right. Nothing was changed.',
  fields: (t) => ({
    message: t.exposeString('message', {
      description: 'One line: `invalid x: v, …`, `unknown x: v, …` or `missing x, …`.',
    }),
    path: t.exposeString('path', {
      description: 'Where in the input, keys joined by dots; empty when it is the whole.',
    }),
    expected: t.exposeString('expected', { description: 'What would be right.' }),
    problems: t.field({
      type: [ProblemRef],
      description: 'Everything that is wrong, by line, where what was given has lines; else empty.',
      resolve: ({ problems }) => [...problems],
    }),
  }),
});
