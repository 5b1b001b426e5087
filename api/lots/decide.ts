// A person accepts or rejects a lot, with a reason; it can be taken back.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, unknown } from '../errors.ts';
import { localId, lotNamed, sorbentOf } from '../stock/service.ts';
import { newId, write } from '../work.ts';
import { checkOf } from './check.ts';
import type { decideSaid, decisionBackSaid } from './said.ts';

export type Decided = { decisionId: string; lotId: string };

export function lotDecided(context: Context, input: z.output<typeof decideSaid>): Promise<Decided> {
  return write(context, 'decideLot', input, async (work) => {
    const { tx, labId, now: at, actorId } = work;
    const sorbent = await sorbentOf(work, input.sorbent);
    const lot = await lotNamed(work, sorbent.id, input.lotNumber, 'input.lotNumber');
    const check = input.check ? await checkOf(work, input.check) : null;
    if (check && check.newLotId !== lot.id)
      throw invalid('input.check', input.check, `a check whose new lot is ${lot.lotNumber}`);
    if (check?.takenBackAt) throw invalid('input.check', input.check, 'a check that was not taken back');
    const said = { outcome: input.outcome, why: input.why, at, actorId };
    const { id } = await tx.lotDecision.create({
      data: { id: newId(), labId, lotId: lot.id, checkId: check?.id ?? null, ...said },
    });
    // What is kept of a rejected lot is let go, and other stock is looked for: planning hears of the lot.
    work.changed('Lot', lot.id, 'CHANGED');
    work.changed('LotDecision', id, 'MADE');
    return { decisionId: id, lotId: lot.id };
  });
}

export function decisionTakenBack(
  context: Context,
  input: z.output<typeof decisionBackSaid>,
  back: boolean,
): Promise<Decided> {
  return write(context, back ? 'takeLotDecisionBack' : 'restoreLotDecision', input, async (work) => {
    const { tx, labId } = work;
    const id = localId('LotDecision', input.decision, 'input.decision');
    const found = await tx.lotDecision.findFirst({ where: { id, labId } });
    if (!found) throw unknown('input.decision', input.decision, 'the id of a decision of this lab');
    await tx.lotDecision.update({ where: { id }, data: { takenBackAt: back ? work.now : null } });
    work.changed('Lot', found.lotId, 'CHANGED');
    work.changed('LotDecision', id, 'CHANGED');
    return { decisionId: id, lotId: found.lotId };
  });
}
