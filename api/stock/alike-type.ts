// The question by which a code that nobody has finds those it could have been.
import { builder } from '../builder.ts';
import { alikeContainers } from './alike.ts';
import { ContainerRef } from './refs.ts';

builder.queryField('containersAlike', (t) =>
  t.field({
    type: [ContainerRef],
    description:
      'Containers whose code is nearly what was typed, at most five, the nearest first: up to two signs differ, or it is the code it had before.',
    args: { code: t.arg.string({ required: true, description: 'What was typed or read.' }) },
    resolve: (_, { code }, context) => alikeContainers(context, code),
  }),
);
