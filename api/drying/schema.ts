// What GraphQL knows of drying: the list of what to dry, and beside it its acts, recipes and weighings.
import './request-type.ts';
import './request-acts-type.ts';
import './request-order-type.ts';
import './dried-type.ts';
import './loss-type.ts';
import './recipe-type.ts';
import './forecast-type.ts';
import { builder } from '../builder.ts';
import type { DryingRequest } from '../database/generated/sqlite/client.ts';
import { connectionOf, pageOf, pageQuery, type Column } from '../page.ts';
import { totalCount } from '../stock/schema.ts';
import { RequestRef } from './refs.ts';
import { StateEnum } from './request-state-type.ts';

const inOrder: Column<DryingRequest>[] = [
  { path: ['position'], direction: 'asc', value: ({ position }) => position },
  { path: ['id'], direction: 'asc', value: ({ id }) => id },
];

builder.queryField('dryingRequests', (t) =>
  t.connection(
    {
      type: RequestRef,
      description: 'The list of what to dry, in the order set by hand.',
      args: {
        state: t.arg({ type: [StateEnum], description: 'Only in these states; those that wait when not given.' }),
      },
      resolve: async (_, args, { database: { read }, lab }) => {
        const page = pageOf(args, inOrder);
        const of = { labId: lab.id, state: { in: args.state ?? ['WAITING' as const] } };
        const { where, ...rest } = pageQuery(inOrder, page);
        const rows = await read.dryingRequest.findMany({ where: { AND: [of, where] }, ...rest });
        return connectionOf(inOrder, page, rows, () => read.dryingRequest.count({ where: of }));
      },
    },
    {
      name: 'DryingRequestsConnection',
      description: 'A page of drying requests.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'DryingRequestsEdge', description: 'A drying request with its place in the list.' },
  ),
);
