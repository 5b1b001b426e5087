// Somebody says of a weighing that it is right, however far it lies from what was expected, or that it is wrong; or takes that back.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, unknown } from '../errors.ts';
import { localId, said } from '../stock/service.ts';
import { newId, write } from '../work.ts';
import { learnSoon } from './background.ts';

export const confirmSaid = z.object({
  event: z.string('the id of a weighing').min(1, 'the id of a weighing'),
  isRight: z.boolean('true, false, or null to take it back').nullish().default(null),
  clientKey: said.clientKey,
});

export async function confirmed(
  context: Context,
  input: z.output<typeof confirmSaid>,
): Promise<{ eventId: string; before: boolean | null }> {
  const answer = await write(context, 'confirmWeighing', input, async (work) => {
    const { tx, labId, now, actorId } = work;
    const eventId = localId('Event', input.event, 'input.event');
    const event = await tx.event.findFirst({ where: { id: eventId, labId } });
    if (!event) throw unknown('input.event', input.event, 'the id of a weighing of this lab');
    if (event.type !== 'WEIGHED') throw invalid('input.event', input.event, 'a weighing');
    if (!event.stands)
      throw invalid('input.event', input.event, 'a weighing that counts; it was corrected or taken back');
    const last = await tx.weighingJudgement.findFirst({ where: { labId, eventId }, orderBy: { seq: 'desc' } });
    const before = last?.isRight ?? null;
    if (before !== input.isRight) {
      await tx.weighingJudgement.create({
        data: { id: newId(), labId, eventId, isRight: input.isRight, at: now, seq: (last?.seq ?? 0) + 1, actorId },
      });
      work.changed('Event', eventId, 'CHANGED');
    }
    return { eventId, before };
  });
  learnSoon();
  return answer;
}
