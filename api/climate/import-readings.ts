// A logger's file into a room's air: all of it or nothing, and nothing twice.
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Room, StoredFile } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { newId, type Work, write } from '../work.ts';
import { disagreementNotes } from './add-readings.ts';
import { answersInput, type AnswersInput, answersOf } from './answers.ts';
import { airSeries, loggerFileOf, refuseOpen, type SensorSeries } from './file-read.ts';
import { renewDays } from './renewed.ts';
import { roomName, roomNamed } from './rooms.ts';
import { sensorName, sensorOf } from './sensors.ts';
import { staleRoom } from './stale.ts';
import { joinReadings, type News } from './stored.ts';
import { type Understood, understoodOf } from './understood.ts';

export const importInput = z.object({
  file: z.string('the id that POST /files answered'),
  room: roomName,
  sensor: sensorName.nullish(),
  answers: answersInput.nullish(),
  clientKey: z.string().nullish(),
});

/** What an import came to; kept with it, as are the file's series and what was left out. */
export type Imported = {
  importId: string;
  roomId: string;
  added: number;
  repeated: number;
  disagreeing: number;
};

export interface ImportSummary extends Understood {
  added: number;
  repeated: number;
  disagreeing: number;
  notes: string[];
}

/** A file that is being imported: its bytes read, or none where they went with an earlier import. */
interface Read {
  told: Understood;
  series: SensorSeries[];
}

export interface FileToImport {
  bytes: Uint8Array;
  fileName: string;
  room: string;
  /** Another name for the sensor than the file gives, when it has one only. */
  sensor?: string | null | undefined;
  answers: AnswersInput;
}

async function readToImport(context: Context, file: FileToImport, path: string, under: string): Promise<Read> {
  const answers = answersOf(file.answers, context.lab.timeZone, under);
  const read = await loggerFileOf(file.bytes, file.fileName, answers, path);
  refuseOpen(read, under);
  const { series, future } = airSeries(read, file.fileName, context.now(), path);
  const told = understoodOf({ ...read, leftOut: [...read.leftOut, ...future].sort((a, b) => a.line - b.line) });
  const names = new Set(series.map(({ sensor }) => sensor));
  if (!file.sensor) return { told, series };
  if (names.size > 1)
    throw invalid(
      'input.sensor',
      file.sensor,
      `the file has ${names.size} sensors: ${[...names].join(', ')}; leave it out`,
    );
  const sensor = file.sensor;
  return { told, series: series.map((one) => ({ ...one, sensor })) };
}

async function writeReadings(context: Context, work: Work, room: Room, series: readonly SensorSeries[]) {
  const engine = context.database.engine;
  const fresh = new Set<string>();
  const news: News[] = [];
  for (const { sensor, quantity, series: read } of series) {
    const { id, isNew } = await sensorOf(work, room, sensor);
    if (isNew) fresh.add(id);
    news.push({ sensorId: id, quantity, series: read });
  }
  const joined = await joinReadings(work.tx, engine, work.labId, news, fresh);
  const from = await renewDays(work.tx, engine, room, joined.days);
  if (from) await staleRoom(work, engine, room.id, from);
  if (joined.added > 0) work.changed('Room', room.id, 'CHANGED');
  return joined;
}

async function bring(
  context: Context,
  work: Work,
  room: Room,
  fileId: string,
  read: Read,
  answers: AnswersInput | null | undefined,
): Promise<Imported> {
  const { added, repeated, disagreeing } = await writeReadings(context, work, room, read.series);
  const counts = { added, repeated, disagreeing: disagreeing.length };
  const summary: ImportSummary = { ...read.told, ...counts, notes: disagreementNotes(disagreeing) };
  const id = newId();
  const given = Object.fromEntries(Object.entries(answers ?? {}).filter(([, value]) => value != null));
  const row = { id, labId: work.labId, fileId, roomId: room.id, at: work.now, answers: given };
  await work.tx.import.create({ data: { ...row, summary: { ...summary } } });
  work.changed('Import', id, 'MADE');
  return { importId: id, roomId: room.id, ...counts };
}

/** An import of the same file into the same room was done and its bytes are gone: there is nothing to add. */
async function importedBefore(work: Work, room: Room, file: Pick<StoredFile, 'id' | 'name'>): Promise<Imported> {
  const before = await work.tx.import.findFirst({
    where: { fileId: file.id, roomId: room.id },
    orderBy: { at: 'desc' },
  });
  if (!before) throw invalid('input.file', file.name, 'it was imported into another room; hand the file in again');
  const { added, repeated, disagreeing } = before.summary as unknown as ImportSummary;
  return { importId: before.id, roomId: room.id, added: 0, repeated: added + repeated, disagreeing };
}

/** Imports a file that was handed in by `POST /files`. An open question refuses it before anything is written. */
export async function importReadings(context: Context, input: z.output<typeof importInput>): Promise<Imported> {
  const file = await context.database.read.storedFile.findFirst({ where: { id: input.file, labId: context.lab.id } });
  if (!file) throw unknown('input.file', input.file, 'the id that POST /files answered');
  await roomNamed(context.database.read, context.lab.id, input.room, 'input.room');
  const toImport = file.bytes && { ...input, bytes: file.bytes, fileName: file.name, answers: input.answers ?? {} };
  const read = toImport && (await readToImport(context, toImport, 'input.file', 'input.answers'));
  return write<Imported>(context, 'importReadings', input, async (work) => {
    const room = await roomNamed(work.tx, work.labId, input.room, 'input.room');
    if (!read) return importedBefore(work, room, file);
    const imported = await bring(context, work, room, file.id, read, input.answers);
    await work.tx.storedFile.update({ where: { id: file.id }, data: { bytes: null } });
    return imported;
  });
}

/**
 * Imports a file's bytes directly, for the import command. A server may be running on the same database: it reads on
 * meanwhile, and its next pass brings the estimates up that this marks.
 */
export async function importFile(
  context: Context,
  file: FileToImport,
): Promise<{ imported: Imported; told: ImportSummary }> {
  await roomNamed(context.database.read, context.lab.id, file.room, 'room');
  const read = await readToImport(context, file, 'FILE', '');
  const imported = await write<Imported>(context, 'importFile', {}, async (work) => {
    const room = await roomNamed(work.tx, work.labId, file.room, 'room');
    const stored = { id: newId(), labId: work.labId, name: file.fileName, receivedAt: work.now };
    const sha256 = createHash('sha256').update(file.bytes).digest('hex');
    await work.tx.storedFile.create({ data: { ...stored, sha256, sizeBytes: file.bytes.length, bytes: null } });
    return bring(context, work, room, stored.id, read, file.answers);
  });
  const { summary } = await context.database.read.import.findUniqueOrThrow({ where: { id: imported.importId } });
  return { imported, told: summary as unknown as ImportSummary };
}
