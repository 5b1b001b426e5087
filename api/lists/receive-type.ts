// A list comes in and is taken back, in GraphQL.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { ContainerRef, fresh, there } from '../stock/schema.ts';
import { listTakenBack, receivedList, receiveListSaid, takeListBackSaid, type ListReceived } from './service.ts';
import { AnswersInput } from './question-type.ts';

const ReceivedRef = builder.objectRef<ListReceived>('ListReceived').implement({
  description: 'A list came in.',
  fields: (t) => ({
    list: t.string({ description: 'Its id, to take it back by.', resolve: ({ listId }) => listId }),
    already: t.exposeBoolean('already', { description: 'It had come in before: nothing was booked twice.' }),
    containerCount: t.int({
      description: 'How many containers came in.',
      resolve: ({ containerIds }) => containerIds.length,
    }),
    containers: t.field({
      type: [ContainerRef],
      description: 'The containers, in the order of their lines.',
      resolve: async ({ containerIds }, _, { load }) =>
        (await Promise.all(containerIds.map((id) => load.container.load(id)))).map((row) => there(row, 'container')),
    }),
    notes: t.exposeStringList('notes', { description: 'What was taken for granted.' }),
  }),
});

addMutation('receiveList', {
  description:
    'The lab’s own list comes in: every line, or none. A refusal names everything that is wrong in `problems`, by line. The same list again books nothing twice.',
  check: receiveListSaid,
  success: ReceivedRef,
  run: (input, context) => fresh(context, receivedList(context, input)),
  fields: (t) => ({
    list: t.string({ required: true, description: 'The id that `POST /lists` answered.' }),
    answers: t.field({ type: AnswersInput, description: 'What a person said of it.' }),
  }),
});

const TakenBackRef = builder.objectRef<{ listId: string; containers: number }>('ListTakenBack').implement({
  description: 'A list was taken back.',
  fields: (t) => ({
    list: t.string({ description: 'Its id; it can be read and booked again.', resolve: ({ listId }) => listId }),
    containerCount: t.int({ description: 'Containers that never were.', resolve: ({ containers }) => containers }),
  }),
});

addMutation('takeListBack', {
  description:
    'Takes a whole list back by corrections, while nothing happened to its containers since. Sorbents, suppliers, rooms and lots that were made for it stay.',
  check: takeListBackSaid,
  success: TakenBackRef,
  run: (input, context) => fresh(context, listTakenBack(context, input)),
  fields: (t) => ({ list: t.string({ required: true, description: 'The id of the list.' }) }),
});
