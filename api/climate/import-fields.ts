// Handing in a logger file: what would be understood, the import itself, and the imports so far.
import { resolveCursorConnection } from '@pothos/plugin-relay';
import { builder } from '../builder.ts';
import type { Import } from '../database/generated/sqlite/client.ts';
import { addMutation } from '../mutation.ts';
import { answersInput } from './answers.ts';
import { checked } from '../errors.ts';
import { importInput, importReadings, type Imported } from './import-readings.ts';
import { LoggerFileRef } from './import-type.ts';
import { ImportRef, RoomRef } from './refs.ts';
import { writtenRoom } from './room-mutations.ts';
import { storedLoggerFile } from './stored-file.ts';

const LoggerAnswers = builder.inputType('LoggerAnswersInput', {
  description: 'What a logger file leaves open, answered. What is not given is taken from the file.',
  fields: (t) => ({
    zone: t.string({
      description:
        "Zone of its times, such as `Europe/Helsinki` or `UTC+02:00`; the lab's where file and answer name none.",
    }),
    dates: t.string({ description: 'Order of day and month: `day-first`, `month-first` or `year-first`.' }),
    unit: t.string({ description: 'Unit of its temperatures: `C`, `F` or `K`.' }),
    humidity: t.string({ description: 'Its humidities are `percent` or a `fraction`.' }),
    quantity: t.stringList({
      description: 'What its columns without a name are, in order: `temperature`, `humidity`.',
    }),
    start: t.string({
      description: 'For a file without times: when its first row was read, such as `2026-03-02T08:00`.',
    }),
    everySeconds: t.float({ description: 'For a file without times: seconds between rows.' }),
  }),
});

builder.queryField('loggerFile', (t) =>
  t.field({
    type: LoggerFileRef,
    nullable: true,
    description: 'A file that was handed in, read again with answers; null when there is none of that id.',
    args: {
      id: t.arg.id({ required: true, description: 'The id that `POST /files` answered.' }),
      answers: t.arg({ type: LoggerAnswers, description: 'Answers to what it leaves open.' }),
    },
    resolve: (_, { id, answers }, context) =>
      storedLoggerFile(context, id, checked(answersInput, answers ?? {}, 'answers')),
  }),
);

const ReadingsImported = builder.objectRef<Imported>('ReadingsImported').implement({
  description: "A logger file was brought into a room's air. Counts are of single values.",
  fields: (t) => ({
    import: t.field({
      type: ImportRef,
      description: 'The import, with what was understood and left out.',
      resolve: ({ importId }, _, { database }) => database.read.import.findUniqueOrThrow({ where: { id: importId } }),
    }),
    room: t.field({
      type: RoomRef,
      description: 'The room.',
      resolve: (answer, _, context) => writtenRoom(answer, context),
    }),
    added: t.exposeInt('added', { description: 'Values that are new.' }),
    repeated: t.exposeInt('repeated', { description: 'Values that were there already, for the same instant.' }),
    disagreeing: t.exposeInt('disagreeing', {
      description: 'Values for an instant that has another value already; the first is kept.',
    }),
  }),
});

addMutation('importReadings', {
  description:
    "Brings a file that was handed in by `POST /files` into a room's air, whole or not at all. The same file again adds nothing. What the file leaves open is refused with the choices.",
  check: importInput,
  success: ReadingsImported,
  run: (input, context) => importReadings(context, input),
  fields: (t) => ({
    file: t.id({ required: true, description: 'The id that `POST /files` answered.' }),
    room: t.string({ required: true, description: "The room's name." }),
    sensor: t.string({ description: 'Another name for its sensor than the file gives, when it has one only.' }),
    answers: t.field({ type: LoggerAnswers, description: 'Answers to what the file leaves open.' }),
  }),
});

builder.queryField('imports', (t) =>
  t.connection(
    {
      type: ImportRef,
      description: 'Files that were imported, the newest first.',
      resolve: (_, args, { database, lab }) =>
        resolveCursorConnection<Promise<Import[]>>(
          { args, maxSize: 200, toCursor: ({ id }) => id },
          ({ before, after, limit, inverted }): Promise<Import[]> =>
            database.read.import.findMany({
              // Ids are UUIDv7: their order is that of the imports.
              where: { labId: lab.id, id: { ...(before ? { gt: before } : {}), ...(after ? { lt: after } : {}) } },
              orderBy: { id: inverted ? 'asc' : 'desc' },
              take: limit,
            }),
        ),
    },
    { name: 'ImportsConnection', description: 'A page of imports.' },
    { name: 'ImportsEdge', description: 'An import with its place in the list.' },
  ),
);
