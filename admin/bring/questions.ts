// What bringing a list asks and tells.
import { act } from '../act/told.ts';
import { question } from '../ask.ts';
import type { Closure, Kind } from '../say/words.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';
import type { Field } from './columns.ts';

/** What a person said of a list so far. */
export interface Answers {
  columns: { column: number; field: Field | null }[];
  given: { question: string; answer: string }[];
}

const rowFields = {
  line: number,
  sorbent: text,
  supplier: maybe(text),
  lotNumber: text,
  kind: word<Kind>(),
  count: number,
  grams: maybe(number),
  plates: maybe(number),
  vessel: maybe(text),
  room: text,
  receivedAt: maybe(instant),
  openedAt: maybe(instant),
  closure: maybe(word<Closure>()),
  oldCode: maybe(text),
};

const listFields = {
  id: text,
  name: text,
  bookedAt: maybe(instant),
  takenBackAt: maybe(instant),
  isRemembered: flag,
  columns: many({ column: number, heading: text, field: maybe(word<Field>()), samples: many(text) }),
  rowCount: number,
  waitingCount: number,
  containerCount: number,
  rows: many(rowFields),
  leftOutCount: number,
  leftOut: many({ line: number, why: text }),
  problemCount: number,
  problems: many({ line: maybe(number), column: maybe(text), value: text, expected: text }),
  questions: many({ question: text, about: text, choices: many({ answer: text, words: text }) }),
  notes: many(text),
  containers: many({ label: text, oldCode: maybe(text) }),
};

export const listQuestion = question<{ id: string; answers: Answers }>(
  'StockList',
  '$id: String!, $answers: StockListAnswersInput',
)({ stockList: maybe(given('id: $id, answers: $answers', listFields)) });

export type StockList = NonNullable<Answer<typeof listQuestion.shape>['stockList']>;
export type Row = StockList['rows'][number];
export type Asked = StockList['questions'][number];

export const receiveListAct = act(
  'receiveList',
  'ListReceived',
  {
    list: text,
    answers: maybe({
      columns: maybe(many({ column: number, field: maybe(word<Field>()) })),
      given: maybe(many({ question: text, answer: text })),
    }),
  },
  { already: flag, containerCount: number },
);

export const takeListBackAct = act('takeListBack', 'ListTakenBack', { list: text }, { containerCount: number });
