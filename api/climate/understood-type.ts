// What was understood of a logger file, as GraphQL shows it.
import { builder } from '../builder.ts';
import type { LeftOut, Question } from './logger/file.ts';
import type { SeriesUnderstood } from './understood.ts';

const FirstRow = builder.objectRef<SeriesUnderstood['firstRows'][number]>('LoggerRow').implement({
  description: 'A reading as it was understood, to compare with the file.',
  fields: (t) => ({
    line: t.exposeInt('line', { description: 'Line of the file, from 1.' }),
    at: t.field({ type: 'DateTime', description: 'When it was read.', resolve: ({ at }) => new Date(at) }),
    value: t.exposeFloat('value', { description: 'Temperature in °C or relative humidity in %.' }),
  }),
});

const instant = (text: string | null): Date | null => (text === null ? null : new Date(text));

export const LoggerSeries = builder.objectRef<SeriesUnderstood>('LoggerSeries').implement({
  description: 'One sensor, one quantity of a logger file.',
  fields: (t) => ({
    sensor: t.exposeString('sensor', { description: "The sensor's name, from the file or its name." }),
    column: t.exposeString('column', { description: 'The heading of its column, or `column 2` where there is none.' }),
    quantity: t.exposeString('quantity', {
      description: '`temperature`, `relative humidity`, or what else it is, which is not imported.',
    }),
    unit: t.exposeString('unit', { nullable: true, description: 'The unit in the file; null where it is not known.' }),
    readings: t.exposeInt('readings', { description: 'How many readings.' }),
    missing: t.exposeInt('missing', { description: 'How many times without a value.' }),
    first: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'Its first reading; null while the file has no times.',
      resolve: ({ first }) => instant(first),
    }),
    last: t.field({
      type: 'DateTime',
      nullable: true,
      description: 'Its last reading; null while the file has no times.',
      resolve: ({ last }) => instant(last),
    }),
    min: t.exposeFloat('min', { nullable: true, description: 'Lowest, °C or % RH.' }),
    max: t.exposeFloat('max', { nullable: true, description: 'Highest, °C or % RH.' }),
    mean: t.exposeFloat('mean', { nullable: true, description: 'Mean of the readings, °C or % RH.' }),
    firstRows: t.field({
      type: [FirstRow],
      description: 'Its first few readings as understood.',
      resolve: ({ firstRows }) => firstRows,
    }),
  }),
});

export const LeftOutLine = builder.objectRef<LeftOut>('LeftOutLine').implement({
  description: 'A line of a logger file that holds no reading, and why.',
  fields: (t) => ({
    line: t.exposeInt('line', { description: 'Line of the file, from 1.' }),
    why: t.exposeString('why', { description: 'Why it was left out.' }),
  }),
});

export const LoggerQuestion = builder.objectRef<Question>('LoggerQuestion').implement({
  description: 'Something the file leaves open; it is imported once it is answered.',
  fields: (t) => ({
    asks: t.exposeString('asks', {
      description: 'The answer it wants: `dates`, `zone`, `unit`, `humidity`, `quantity` or `start`.',
    }),
    about: t.exposeString('about', { description: 'The question, in words.' }),
    choices: t.exposeStringList('choices', { description: 'What it may be; empty when it is free.' }),
  }),
});
