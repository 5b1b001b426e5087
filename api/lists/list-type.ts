// A list as it is understood, as GraphQL shows it.
import { builder } from '../builder.ts';
import type { StockList } from '../database/generated/sqlite/client.ts';
import type { Problem } from '../errors.ts';
import { ProblemRef } from '../scalars.ts';
import { ContainerRef, there } from '../stock/schema.ts';
import { receiptSaid, type ReadList } from './stored.ts';
import { ColumnRef } from './column-type.ts';
import { RowRef, LeftOutRef } from './row-type.ts';
import { QuestionRef } from './question-type.ts';

/** Problems, lines left out and rows that one answer holds; their numbers are whole. */
const shownAtMost = { problems: 500, leftOut: 200, rows: 12 };

export interface Shown extends ReadList {
  list: StockList;
}

export const StockListRef = builder.objectRef<Shown>('StockList').implement({
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
