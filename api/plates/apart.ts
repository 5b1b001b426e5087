// All of a box where it stands, or some of it, which become a batch with a label of its own.
import { roomNamed } from '../climate/service.ts';
import type { Closure, Container } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { containerOf, platesMoved, takePlatesSaid, type Recorded } from '../stock/service.ts';
import type { Work } from '../work.ts';

interface SaidBatch {
  label: string;
  plates: number | null;
  at?: Date | null | undefined;
  room?: string | null | undefined;
  closure?: Closure | null | undefined;
}

interface Apart {
  /** What the act happens to. */
  container: Container;
  made: Recorded | null;
  /** Where all of a box stands afterwards; undefined where nobody said. */
  after: { roomId: string; closure: Closure } | undefined;
}

/** Some plates go into a box of their own; all of them stay in theirs, which may stand elsewhere afterwards. */
export async function setApart(work: Work, input: SaidBatch, closure: Closure, always: boolean): Promise<Apart> {
  const { label, plates, at, room } = input;
  const box = await containerOf(work, label);
  if (box.kind !== 'PLATE_BOX') throw invalid('input.label', label, 'the label of a plate box');
  const roomId = room ? (await roomNamed(work.tx, work.labId, room, 'input.room')).id : box.roomId;
  const there = box.plates ?? 0;
  if (plates === null || plates === there) {
    const says = always || input.room || input.closure;
    return { container: box, made: null, after: says ? { roomId, closure: input.closure ?? closure } : undefined };
  }
  const said = { label, plates, at: at ?? work.now, room, closure: input.closure ?? closure };
  const made = await platesMoved(work, takePlatesSaid.parse(said));
  if (!made.madeId) throw new Error('plates moved into nothing');
  return {
    container: await work.tx.container.findUniqueOrThrow({ where: { id: made.madeId } }),
    made,
    after: undefined,
  };
}

export const both = (apart: Apart, recorded: Recorded, notes: string[] = []): Recorded => ({
  ...recorded,
  madeId: apart.made?.madeId ?? null,
  notes: [...(apart.made?.notes ?? []), ...recorded.notes, ...notes],
});
