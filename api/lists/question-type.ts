// What only a person can say of a list, as GraphQL asks it and takes the answers.
import { builder } from '../builder.ts';
import type { Choice, Question } from './questions.ts';
import { FieldEnum } from './column-type.ts';

const ChoiceRef = builder.objectRef<Choice>('StockListChoice').implement({
  description: 'A possible answer.',
  fields: (t) => ({
    answer: t.exposeString('answer', { description: 'What to answer.' }),
    words: t.exposeString('words', { description: 'The same for a person.' }),
  }),
});

export const QuestionRef = builder.objectRef<Question>('StockListQuestion').implement({
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

export const AnswersInput = builder.inputType('StockListAnswersInput', {
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
