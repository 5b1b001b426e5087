// The lab's own list, as GraphQL shows it: what was understood, what is asked, what is wrong; and the acts of booking it and taking it back.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { StockList } from '../database/generated/sqlite/client.ts';
import type { Problem } from '../errors.ts';
import { addMutation } from '../mutation.ts';
import { ProblemRef } from '../scalars.ts';
import { ClosureEnum, ContainerKindEnum, ContainerRef, fresh, there } from '../stock/schema.ts';
import { fields, fieldWord, type Field } from './fields.ts';
import { knownOf } from './known.ts';
import type { Row } from './line.ts';
import { listTakenBack, receivedList, receiveListSaid, takeListBackSaid, type ListReceived } from './service.ts';
import { answersSaid, readAgain, receiptSaid, type ReadList } from './stored.ts';
import type { Choice, Question } from './questions.ts';
import type { LeftOut, MatchedColumn } from './understood.ts';

/** Problems, lines left out and rows that one answer holds; their numbers are whole. */
const shownAtMost = { problems: 500, leftOut: 200, rows: 12 };

const FieldEnum = builder.enumType('StockListField', {
  description: 'What a column of a list says.',
  values: Object.fromEntries(
    fields.map((field) => [field, { value: field, description: `The ${fieldWord[field]}.` }]),
  ) as Record<Field, { value: Field; description: string }>,
});

const ColumnRef = builder.objectRef<MatchedColumn>('StockListColumn').implement({
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

const RowRef = builder.objectRef<Row>('StockListRow').implement({
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

const LeftOutRef = builder.objectRef<LeftOut>('StockListLeftOut').implement({
  description: 'A line that is not booked.',
  fields: (t) => ({
    line: t.exposeInt('line', { description: 'Its line.' }),
    why: t.exposeString('why', { description: 'Why not.' }),
  }),
});

const ChoiceRef = builder.objectRef<Choice>('StockListChoice').implement({
  description: 'A possible answer.',
  fields: (t) => ({
    answer: t.exposeString('answer', { description: 'What to answer.' }),
    words: t.exposeString('words', { description: 'The same for a person.' }),
  }),
});

const QuestionRef = builder.objectRef<Question>('StockListQuestion').implement({
  description: 'What only a person can say of a list.',
  fields: (t) => ({
    question: t.string({ description: 'Its key, to answer it by.', resolve: ({ key }) => key }),
    about: t.exposeString('about', { description: 'The question.' }),
    choices: t.field({
      type: [ChoiceRef],
      description: 'Answers, the likeliest first; none is taken unasked.',
      resolve: ({ choices }) => choices,
    }),
  }),
});

interface Shown extends ReadList {
  list: StockList;
}

const StockListRef = builder.objectRef<Shown>('StockList').implement({
  description:
    'The lab’s own list of its stock, as it is understood with the answers so far. Nothing of it is booked before `receiveList`.',
  fields: (t) => ({
    id: t.string({ description: 'Its id.', resolve: ({ list }) => list.id }),
    name: t.string({ description: 'The name of its file.', resolve: ({ list }) => list.name }),
    bookedAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When it came in; null while it did not.',
      resolve: ({ list }) => list.bookedAt,
    }),
    takenBackAt: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back.',
      resolve: ({ list }) => list.takenBackAt,
    }),
    isRemembered: t.exposeBoolean('isRemembered', {
      description: 'It is matched as the last list with the same headings was.',
    }),
    sheets: t.stringList({
      description: 'Its sheets that hold something.',
      resolve: ({ understood }) => understood.sheets,
    }),
    sheet: t.string({
      nullable: true,
      description: 'The sheet that is read.',
      resolve: ({ understood }) => understood.sheet,
    }),
    columns: t.field({
      type: [ColumnRef],
      description: 'Its columns, in order.',
      resolve: ({ understood }) => understood.columns,
    }),
    rowCount: t.int({ description: 'Lines that are whole.', resolve: ({ understood }) => understood.rows.length }),
    waitingCount: t.int({
      description: 'Lines that will be whole once the questions are answered.',
      resolve: ({ understood }) => understood.waiting,
    }),
    containerCount: t.int({
      description: 'Containers that the whole lines bring.',
      resolve: ({ understood }) => understood.rows.reduce((sum, { count }) => sum + count, 0),
    }),
    rows: t.field({
      type: [RowRef],
      description: 'The first whole lines, as they are understood.',
      resolve: ({ understood }) => understood.rows.slice(0, shownAtMost.rows),
    }),
    leftOutCount: t.int({
      description: 'Lines that are not booked.',
      resolve: ({ understood }) => understood.leftOut.length,
    }),
    leftOut: t.field({
      type: [LeftOutRef],
      description: 'The first of them.',
      resolve: ({ understood }) => understood.leftOut.slice(0, shownAtMost.leftOut),
    }),
    problemCount: t.int({ description: 'How much is wrong.', resolve: ({ understood }) => understood.problems.length }),
    problems: t.field({
      type: [ProblemRef],
      description: 'What is wrong, by line.',
      resolve: ({ understood }): Problem[] => understood.problems.slice(0, shownAtMost.problems),
    }),
    questions: t.field({
      type: [QuestionRef],
      description: 'What is still asked.',
      resolve: ({ understood }) => understood.questions,
    }),
    notes: t.stringList({
      description: 'What will be so and may surprise.',
      resolve: ({ understood }) => understood.notes,
    }),
    containers: t.field({
      type: [ContainerRef],
      description: 'What came in of it; empty while nothing did.',
      resolve: async ({ list }, _, { load }) => {
        if (!list.bookedAt || list.takenBackAt) return [];
        const { containerIds } = receiptSaid.parse(list.receipt);
        return (await Promise.all(containerIds.map((id) => load.container.load(id)))).map((row) =>
          there(row, 'container'),
        );
      },
    }),
  }),
});

const AnswersInput = builder.inputType('StockListAnswersInput', {
  description: 'What a person said of a list.',
  fields: (t) => ({
    columns: t.field({
      type: [
        builder.inputType('StockListColumnInput', {
          description: 'What a column is.',
          fields: (f) => ({
            column: f.int({ required: true, description: 'Its place, from 0.' }),
            field: f.field({ type: FieldEnum, description: 'What it is; left out when null.' }),
          }),
        }),
      ],
      description: 'What columns are; the others are guessed.',
    }),
    given: t.field({
      type: [
        builder.inputType('StockListAnswerInput', {
          description: 'An answer.',
          fields: (f) => ({
            question: f.string({ required: true, description: 'The key of the question.' }),
            answer: f.string({ required: true, description: 'One of its choices.' }),
          }),
        }),
      ],
      description: 'Answers to questions.',
    }),
  }),
});

async function shownList(context: Context, id: string, said: unknown): Promise<Shown | null> {
  const { database, lab, now } = context;
  const list = await database.read.stockList.findFirst({ where: { id, labId: lab.id } });
  if (!list) return null;
  const known = await knownOf(database.read, lab, now());
  return { list, ...(await readAgain(database.read, list, answersSaid.parse(said), known)) };
}

builder.queryField('stockList', (t) =>
  t.field({
    type: StockListRef,
    nullable: true,
    description: 'A list that was handed in (`POST /lists`), read with these answers; null when there is none.',
    args: {
      id: t.arg.string({ required: true, description: 'Its id.' }),
      answers: t.arg({ type: AnswersInput, description: 'What a person said of it so far.' }),
    },
    resolve: (_, { id, answers }, context) => shownList(context, id, answers),
  }),
);

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
