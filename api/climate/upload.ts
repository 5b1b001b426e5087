// `POST /files`: a logger's file as raw bytes, kept until it is imported.
import { createHash } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { Refused } from '../errors.ts';
import { bodyOf, fileNameOf } from '../handed-in.ts';
import { newId } from '../work.ts';
import type { App } from '../yoga.ts';
import { answersOf } from './answers.ts';
import { loggerFileOf } from './file-read.ts';
import { understoodOf } from './understood.ts';

/** About two million rows: twenty years of readings every five minutes. */
export const mostFileBytes = 64_000_000;

interface Answer {
  status: number;
  body: unknown;
}

const refusal = (status: number, error: string, expected: string): Answer => ({ status, body: { error, expected } });

/** Keeps the file and answers its id with what was understood of it; what is no logger's file is not kept. */
export async function receiveFile(app: App, request: IncomingMessage): Promise<Answer> {
  const name = fileNameOf(request);
  if (name === null) {
    request.resume();
    return refusal(400, 'missing x-file-name, the name of the file, percent-encoded', 'a name such as march.csv');
  }
  const bytes = await bodyOf(request, mostFileBytes);
  if (bytes === null) {
    request.resume();
    const expected = `at most ${mostFileBytes / 1e6} MB; the import command reads larger ones`;
    return refusal(413, `invalid file: ${name}, ${expected}`, expected);
  }
  try {
    const read = await loggerFileOf(bytes, name, answersOf({}, app.lab.timeZone, ''), 'file');
    const id = newId();
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const row = { id, labId: app.lab.id, name, sha256, sizeBytes: bytes.length, bytes, receivedAt: app.now() };
    await app.database.write((tx) => tx.storedFile.create({ data: row, select: { id: true } }));
    return { status: 200, body: { id, name, sizeBytes: bytes.length, ...understoodOf(read) } };
  } catch (error) {
    if (error instanceof Refused) return refusal(422, error.message, error.expected);
    throw error;
  }
}
