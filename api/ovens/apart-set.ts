// The lab sets which families may not share an oven.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Prisma } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { said } from '../stock/service.ts';
import { write } from '../work.ts';
import { families } from './rules.ts';

const family = z.enum(families, families.join(', '));
export const apartSaid = z.object({
  pairs: z.array(z.array(family).length(2, 'two families'), 'pairs of families').max(6, 'at most 6 pairs').nullish(),
  clientKey: said.clientKey,
});

/** Sets which families may not share an oven; null puts common practice back. */
export async function apartSet(context: Context, input: z.output<typeof apartSaid>): Promise<{ labId: string }> {
  const answer = await write(context, 'setOvensApart', input, async (work) => {
    if (input.pairs === undefined) throw missing('input.pairs', 'pairs of families, or null for common practice');
    input.pairs?.forEach(([one, other], i) => {
      if (one === other) throw invalid(`input.pairs.${i}`, [one, other], 'two different families');
    });
    const lab = await work.tx.lab.findUniqueOrThrow({ where: { id: work.labId } });
    const { ovensApart: _, ...rest } = (lab.settings ?? {}) as Record<string, Prisma.InputJsonValue>;
    const settings = input.pairs === null ? rest : { ...rest, ovensApart: input.pairs };
    await work.tx.lab.update({ where: { id: work.labId }, data: { settings } });
    work.changed('Lab', work.labId, 'CHANGED');
    return { labId: work.labId };
  });
  const { settings } = await context.database.read.lab.findUniqueOrThrow({ where: { id: context.lab.id } });
  Object.assign(context.lab, { settings });
  return answer;
}
