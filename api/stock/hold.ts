// Grams and plates kept for somebody: what is promised once is not free for anybody else.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { newId, write, type Work } from '../work.ts';
import { containerOf } from './find.ts';
import { localId } from './ids.ts';
import { said } from './said.ts';
import { nothingGrams } from './stand.ts';
import { grams, words } from './words.ts';

export const holdSaid = z.object({
  label: said.label,
  dryGrams: said.grams,
  plates: said.plates,
  forWhat: said.name,
  until: z.date('an instant').nullish(),
  clientKey: said.clientKey,
});

export const releaseSaid = z.object({ hold: z.string('the id of a hold'), clientKey: said.clientKey });

/** What is there and not kept for anybody. */
export const freeDryGrams = (of: { dryGrams: number; heldDryGrams: number }): number =>
  Math.max(0, of.dryGrams - of.heldDryGrams);

export const freePlates = (of: { plates: number | null; heldPlates: number }): number =>
  Math.max(0, (of.plates ?? 0) - of.heldPlates);

/** The sums of what is kept, from the holds themselves. */
async function heldAnew(work: Work, containerId: string): Promise<void> {
  const where = { containerId, releasedAt: null };
  const { _sum } = await work.tx.hold.aggregate({ where, _sum: { dryGrams: true, plates: true } });
  const data = { heldDryGrams: _sum.dryGrams ?? 0, heldPlates: _sum.plates ?? 0 };
  await work.tx.container.update({ where: { id: containerId }, data });
  work.changed('Container', containerId, 'CHANGED');
}

export interface Keeping {
  containerId: string;
  dryGrams: number | null;
  plates: number | null;
  forWhat: string;
  until: Date | null;
  needId?: string | null;
}

/** Keeps something for somebody, within a larger act that has seen to it that it is free. */
export async function holdMade(work: Work, of: Keeping): Promise<string> {
  const { id } = await work.tx.hold.create({ data: { id: newId(), labId: work.labId, ...of, madeAt: work.now } });
  await heldAnew(work, of.containerId);
  work.changed('Hold', id, 'MADE');
  return id;
}

/** Lets go of what is kept for a need, within a larger act. */
export async function needLetGo(work: Work, needId: string): Promise<void> {
  const holds = await work.tx.hold.findMany({ where: { labId: work.labId, needId, releasedAt: null } });
  for (const { id, containerId } of holds) {
    await work.tx.hold.update({ where: { id }, data: { releasedAt: work.now } });
    await heldAnew(work, containerId);
    work.changed('Hold', id, 'CHANGED');
  }
}

/** Keeps grams or plates for somebody; refuses more than is free. */
export function heldStock(context: Context, input: z.output<typeof holdSaid>) {
  return write(context, 'holdStock', input, async (work) => {
    const container = await containerOf(work, input.label);
    const { forWhat, until = null } = input;
    const isPlates = container.kind === 'PLATE_BOX';
    const plates = isPlates ? input.plates : null;
    const dryGrams = isPlates ? null : input.dryGrams;
    if (isPlates && plates === null)
      throw missing('input.plates', `the number of plates: ${container.label} is a plate box`);
    if (!isPlates && dryGrams === null) throw missing('input.dryGrams', 'the dry grams to keep');
    const free = freeDryGrams(container);
    if (dryGrams !== null && dryGrams > free + nothingGrams) {
      throw invalid(
        'input.dryGrams',
        dryGrams,
        `at most ${grams(free)} (dry): the rest of ${container.label} is kept for somebody or gone`,
      );
    }
    if (plates !== null && plates > freePlates(container)) {
      throw invalid(
        'input.plates',
        plates,
        `at most ${words.plates(freePlates(container))}: the rest of ${container.label} is kept for somebody or gone`,
      );
    }
    const holdId = await holdMade(work, { containerId: container.id, dryGrams, plates, forWhat, until });
    return { holdId, containerId: container.id };
  });
}

/** Lets go of what was kept; letting go twice is no harm. */
export function releasedHold(context: Context, input: z.output<typeof releaseSaid>) {
  return write(context, 'releaseHold', input, async (work) => {
    const id = localId('Hold', input.hold, 'input.hold');
    const hold = await work.tx.hold.findFirst({ where: { id, labId: work.labId } });
    if (!hold) throw unknown('input.hold', input.hold, 'the id of a hold of this lab');
    if (!hold.releasedAt) await work.tx.hold.update({ where: { id }, data: { releasedAt: work.now } });
    await heldAnew(work, hold.containerId);
    work.changed('Hold', id, 'CHANGED');
    return { holdId: id, containerId: hold.containerId };
  });
}
