// What GraphQL knows of the lab's own lists: how one was understood with the answers so far, and beside it the acts.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { knownOf } from './known.ts';
import { answersSaid, readAgain } from './stored.ts';
import { type Shown, StockListRef } from './list-type.ts';
import './receive-type.ts';
import { AnswersInput } from './question-type.ts';

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
