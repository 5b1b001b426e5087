// A file that was handed in, read with answers, without importing it.
import type { Context } from '../context.ts';
import { invalid } from '../errors.ts';
import { type AnswersInput, answersOf } from './answers.ts';
import { loggerFileOf } from './file-read.ts';
import type { ImportSummary } from './import-readings.ts';
import type { StoredLoggerFile } from './import-type.ts';
import { understoodOf } from './understood.ts';

/** Null when there is no such file. After its import its bytes are gone, and what was understood then is told. */
export async function storedLoggerFile(
  context: Context,
  id: string,
  answers: AnswersInput,
): Promise<StoredLoggerFile | null> {
  const { database, lab } = context;
  const file = await database.read.storedFile.findFirst({
    where: { id, labId: lab.id },
    include: { imports: { orderBy: { at: 'desc' }, take: 1 } },
  });
  if (!file) return null;
  const { name, sizeBytes, bytes } = file;
  const [last] = file.imports;
  const known = { id, name, sizeBytes, importedAt: last?.at ?? null };
  if (bytes) {
    const read = await loggerFileOf(bytes, name, answersOf(answers, lab.timeZone, 'answers'), 'id');
    return { ...known, ...understoodOf(read) };
  }
  if (!last) throw invalid('id', id, 'its bytes are gone; hand the file in again');
  return { ...known, ...(last.summary as unknown as ImportSummary) };
}
