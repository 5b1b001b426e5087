// The query `estimates`: how far the background estimate is.
import { builder } from '../builder.ts';
import { progressOf } from './progress.ts';
import { ProgressRef } from './refs.ts';

ProgressRef.implement({
  description: 'How far the background estimate is that brings every container in use up to now.',
  fields: (t) => ({
    running: t.exposeBoolean('running', { description: 'A pass is under way.' }),
    done: t.exposeInt('done', { description: 'Containers estimated in it so far.' }),
    total: t.exposeInt('total', { description: 'Containers it has found to estimate so far.' }),
    startedAt: t.expose('startedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it began; null before the first.',
    }),
    finishedAt: t.expose('finishedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When the last one ended; null before that.',
    }),
  }),
});

builder.queryField('estimates', (t) =>
  t.field({
    type: ProgressRef,
    description: 'How far the background estimate is.',
    resolve: (_, __, { database }) => progressOf(database),
  }),
);
