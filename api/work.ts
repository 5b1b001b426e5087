// One act of writing: a transaction with its client key, its outbox rows, and what it leaves stale.
import { createHash } from 'node:crypto';
import { v7 as newId } from 'uuid';
import type { Context } from './context.ts';
import type { ChangeKind, Prisma } from './database/generated/sqlite/client.ts';
import { Refused, unknown } from './errors.ts';

export type Transaction = Prisma.TransactionClient;

/** What a service is handed while it writes. */
export interface Work {
  tx: Transaction;
  labId: string;
  actorId: string | null;
  /** When it is written down. */
  now: Date;
  /** Notes a row of the outbox, written in the same transaction. */
  changed(entity: string, entityId: string, kind: ChangeKind): void;
  /** Says that a container's exposure must be brought up again from an instant on. */
  stale(containerId: string, from: Date): void;
}

/** Plain JSON that a repeat of the same act can be answered with: ids and words, never rows. */
export type Answer = Record<string, string | number | boolean | null | string[]>;

/** Set once by the exposure room: brings the touched containers forward after the commit. */
export type Refresh = (context: Context, containerIds: string[]) => Promise<void>;
let refreshExposures: Refresh = async () => {};
export const onStale = (refresh: Refresh): void => {
  refreshExposures = refresh;
};

const hashOf = (name: string, input: unknown): string =>
  createHash('sha256')
    .update(JSON.stringify([name, input]))
    .digest('hex');

async function remembered(
  tx: Pick<Transaction, 'clientKey'>,
  labId: string,
  key: string,
  bodyHash: string,
): Promise<Answer | null> {
  const before = await tx.clientKey.findUnique({ where: { labId_key: { labId, key } } });
  if (!before) return null;
  if (before.bodyHash !== bodyHash) {
    throw new Refused(
      `invalid input.clientKey: ${key}, it was used for something else`,
      'input.clientKey',
      'a new key for a new act',
    );
  }
  return before.answer as Answer;
}

/** What an act under the same key was answered with before: for one that has much to work out before it writes. */
export async function answeredBefore<A extends Answer>(
  { database, lab }: Context,
  name: string,
  { clientKey, ...body }: { clientKey?: string | null | undefined },
): Promise<A | null> {
  return clientKey ? ((await remembered(database.read, lab.id, clientKey, hashOf(name, body))) as A | null) : null;
}

/**
 * Runs `act` in one transaction of the write queue. The same client key with the same body
 * returns the first answer and writes nothing; with another body it is refused.
 */
export async function write<A extends Answer>(
  context: Context,
  name: string,
  input: { clientKey?: string | null | undefined },
  act: (work: Work) => Promise<A>,
): Promise<A> {
  if (context.actorName && !context.actor) {
    throw unknown('Drumkeep-Person', context.actorName, "the short name of one of the lab's people");
  }
  const { clientKey, ...body } = input;
  const labId = context.lab.id;
  const touched = new Map<string, Date>();
  const answer = await context.database.write(async (tx) => {
    touched.clear();
    const hash = hashOf(name, body);
    if (clientKey) {
      const before = await remembered(tx, labId, clientKey, hash);
      if (before) return before as A;
    }
    const now = context.now();
    const changes: Prisma.ChangeCreateManyInput[] = [];
    const work: Work = {
      tx,
      labId,
      actorId: context.actor?.id ?? null,
      now,
      changed: (entity, entityId, kind) => changes.push({ labId, at: now, entity, entityId, kind }),
      stale: (containerId, from) => {
        const earlier = touched.get(containerId);
        if (!earlier || from < earlier) touched.set(containerId, from);
      },
    };
    const answer = await act(work);
    for (const [containerId, from] of touched) await markStale(tx, labId, containerId, from);
    if (changes.length > 0) await tx.change.createMany({ data: changes });
    if (clientKey) await tx.clientKey.create({ data: { labId, key: clientKey, bodyHash: hash, answer, madeAt: now } });
    return answer;
  });
  if (touched.size > 0 && !context.estimateLater) await refreshExposures(context, [...touched.keys()]);
  return answer;
}

/**
 * The exposure's inputs changed from an instant on; `version` counts that, so that an estimate under way is thrown away.
 * A container whose exposure does not exist yet gets an unknown one, so that nothing is ever missing from a list.
 */
export async function markStale(tx: Transaction, labId: string, containerId: string, from: Date): Promise<void> {
  const before = await tx.exposure.findUnique({ where: { containerId }, select: { staleFrom: true } });
  if (!before) {
    const unknown = { asOf: from, state: 'UNKNOWN', urgency: 0, reason: 'not estimated yet' } as const;
    await tx.exposure.create({ data: { containerId, labId, staleFrom: from, version: 1, ...unknown } });
    return;
  }
  const staleFrom = before.staleFrom && before.staleFrom <= from ? before.staleFrom : from;
  await tx.exposure.update({ where: { containerId }, data: { staleFrom, version: { increment: 1 } } });
}

export { newId };
