// Logger files that were handed in, and their imports, as GraphQL shows them.
import { builder } from '../builder.ts';
import type { Import } from '../database/generated/sqlite/client.ts';
import type { ImportSummary } from './import-readings.ts';
import { ImportRef, RoomRef } from './refs.ts';
import { writtenRoom } from './room-mutations.ts';
import type { Understood } from './understood.ts';
import { LeftOutLine, LoggerQuestion, LoggerSeries } from './understood-type.ts';

const understoodText = 'What was understood, in one sentence.';
const leftOutText = 'Lines that were left out, the first 200.';
const leftOutCountText = 'How many lines were left out in all.';

export type StoredLoggerFile = Understood & { id: string; name: string; sizeBytes: number; importedAt: Date | null };

export const LoggerFileRef = builder.objectRef<StoredLoggerFile>('LoggerFile').implement({
  description: 'A logger file that was handed in by `POST /files`, as it would be imported with the given answers.',
  fields: (t) => ({
    id: t.exposeID('id', { description: 'What `importReadings` takes as `file`.' }),
    name: t.exposeString('name', { description: 'Its name.' }),
    sizeBytes: t.exposeInt('sizeBytes', { description: 'Its size, bytes.' }),
    importedAt: t.expose('importedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was imported; null while it was not.',
    }),
    understood: t.exposeString('understood', { description: understoodText }),
    series: t.field({ type: [LoggerSeries], description: 'What it holds.', resolve: ({ series }) => series }),
    leftOut: t.field({ type: [LeftOutLine], description: leftOutText, resolve: ({ leftOut }) => leftOut }),
    leftOutCount: t.exposeInt('leftOutCount', { description: leftOutCountText }),
    questions: t.field({
      type: [LoggerQuestion],
      description: 'What it leaves open. It cannot be imported before all are answered.',
      resolve: ({ questions }) => questions,
    }),
  }),
});

const summaryOf = (row: Import): ImportSummary => row.summary as unknown as ImportSummary;

builder.node(ImportRef, {
  name: 'Import',
  description: "A logger file that was brought into a room's air.",
  id: { resolve: (row) => row.id },
  loadWithoutCache: (id, { database, lab }) => database.read.import.findFirst({ where: { id, labId: lab.id } }),
  fields: (t) => ({
    at: t.expose('at', { type: 'DateTime', description: 'When it was imported.' }),
    fileName: t.string({
      description: "The file's name.",
      resolve: async ({ fileId }, _, { database }) =>
        (await database.read.storedFile.findUnique({ where: { id: fileId }, select: { name: true } }))?.name ?? '',
    }),
    room: t.field({
      type: RoomRef,
      description: 'The room whose air it is.',
      resolve: (row, _, context) => writtenRoom(row, context),
    }),
    understood: t.string({ description: understoodText, resolve: (row) => summaryOf(row).understood }),
    added: t.int({ description: 'Values that were new.', resolve: (row) => summaryOf(row).added }),
    repeated: t.int({
      description: 'Values that were there already, for the same instant.',
      resolve: (row) => summaryOf(row).repeated,
    }),
    disagreeing: t.int({
      description: 'Values for an instant that had another value already; the first was kept.',
      resolve: (row) => summaryOf(row).disagreeing,
    }),
    notes: t.stringList({ description: 'What disagreed, in sentences.', resolve: (row) => summaryOf(row).notes }),
    series: t.field({ type: [LoggerSeries], description: 'What it held.', resolve: (row) => summaryOf(row).series }),
    leftOut: t.field({ type: [LeftOutLine], description: leftOutText, resolve: (row) => summaryOf(row).leftOut }),
    leftOutCount: t.int({ description: leftOutCountText, resolve: (row) => summaryOf(row).leftOutCount }),
  }),
});
