// One worker's share of a round: reads its containers a chunk at a time, estimates them, and hands them over in batches.
import { containersToEstimate } from '../database/fleet.ts';
import type { Reader } from '../database/reader.ts';
import { estimatesOf, type Estimates } from './estimate.ts';
import { groundsOf, type LabFacts } from './ground.ts';

/** What a worker is told to do. */
export interface Share {
  readonly lab: LabFacts;
  readonly asOfMs: number;
  readonly only: 'all' | 'stale';
  /** Which of how many equal parts of the list. */
  readonly part: number;
  readonly parts: number;
  readonly unwaiting: boolean;
}

/** Containers read in one go: each costs a handful of statements, whatever its number. */
const chunkSize = 250;

export interface Told {
  /** How many containers the share holds. */
  total(count: number): void;
  /** Takes a batch; resolves with the number of containers that the next one may hold. */
  batch(made: Estimates, containers: number): Promise<number>;
  /** The round is to end early. */
  stopped(): boolean;
}

/** Works through a share; `asked` goes along from round to round. */
export async function estimateShare(reader: Reader, share: Share, asked: Set<string>, told: Told): Promise<void> {
  const all = await containersToEstimate(reader, share.lab.id, share.only);
  const from = Math.floor((share.part * all.length) / share.parts);
  const until = Math.floor(((share.part + 1) * all.length) / share.parts);
  const ids = all.slice(from, until).map(({ id }) => id);
  told.total(ids.length);
  const grounds = await groundsOf(reader, share.lab);
  const { asOfMs, unwaiting } = share;
  let size = 50;
  for (let at = 0; at < ids.length && !told.stopped(); at += chunkSize) {
    const chunk = ids.slice(at, at + chunkSize);
    const { estimates, waits } = await estimatesOf(chunk, { reader, grounds, asOfMs, asked, unwaiting });
    for (let sent = 0; sent < estimates.length || sent === 0;) {
      const part = estimates.slice(sent, sent + size);
      const isLast = sent + size >= estimates.length;
      const containers = isLast ? chunk.length - sent : part.length;
      sent += Math.max(1, part.length);
      size = await told.batch({ estimates: part, waits: isLast ? waits : [] }, Math.max(0, containers));
    }
  }
}
