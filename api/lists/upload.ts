// `POST /lists`: the lab's own list as raw bytes, or pasted cells as text; kept until somebody books it.
import { createHash } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { bodyOf, fileNameOf } from '../handed-in.ts';
import { newId } from '../work.ts';
import type { App } from '../yoga.ts';
import { listIn, mostListBytes } from './read.ts';
import { packed } from './stored.ts';

interface Answer {
  status: number;
  body: unknown;
}

const refusal = (status: number, error: string, expected: string): Answer => ({ status, body: { error, expected } });

/** Lists that were handed in and never booked are let go after so many days. */
const keptDays = 30;

/** Keeps the list and answers its id; what is no list is not kept. */
export async function receiveListFile(app: App, request: IncomingMessage): Promise<Answer> {
  const name = fileNameOf(request);
  if (name === null) {
    request.resume();
    return refusal(400, 'missing x-file-name, the name of the file, percent-encoded', 'a name such as stock.xlsx');
  }
  const bytes = await bodyOf(request, mostListBytes);
  if (bytes === null) {
    request.resume();
    const expected = `at most ${mostListBytes / 1e6} MB: the list alone, as CSV`;
    return refusal(413, `invalid file: ${name}, ${expected}`, expected);
  }
  const read = await listIn(bytes);
  if ('is' in read) return refusal(422, `invalid file: ${name} is ${read.is}, ${read.expected}`, read.expected);
  const { database, lab } = app;
  const now = app.now();
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const row = {
    id: newId(),
    labId: lab.id,
    name,
    sha256,
    sizeBytes: bytes.length,
    sheets: packed(read),
    receivedAt: now,
  };
  const id = await database.write(async (tx) => {
    const old = new Date(now.getTime() - keptDays * 86_400_000);
    await tx.stockList.deleteMany({ where: { labId: lab.id, bookedAt: null, receivedAt: { lt: old } } });
    // The same list again is the one that is there, booked or not, unless it was taken back.
    const there = await tx.stockList.findFirst({
      where: { labId: lab.id, sha256, takenBackAt: null },
      orderBy: { bookedAt: 'desc' },
      select: { id: true, bookedAt: true },
    });
    if (there) return there.id;
    return (await tx.stockList.create({ data: row, select: { id: true } })).id;
  });
  return { status: 200, body: { id, name } };
}
