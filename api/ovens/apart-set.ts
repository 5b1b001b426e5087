// The lab sets which families may not share an oven.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing } from '../errors.ts';
import { settingsWritten } from '../lab-settings.ts';
import { said } from '../stock/service.ts';
import { families } from './rules.ts';

const family = z.enum(families, families.join(', '));
export const apartSaid = z.object({
  pairs: z.array(z.array(family).length(2, 'two families'), 'pairs of families').max(6, 'at most 6 pairs').nullish(),
  clientKey: said.clientKey,
});

/** Sets which families may not share an oven; null puts common practice back. */
export function apartSet(context: Context, input: z.output<typeof apartSaid>): Promise<{ labId: string }> {
  return settingsWritten(context, 'setOvensApart', input, ({ ovensApart: _, ...rest }) => {
    if (input.pairs === undefined) throw missing('input.pairs', 'pairs of families, or null for common practice');
    input.pairs?.forEach(([one, other], i) => {
      if (one === other) throw invalid(`input.pairs.${i}`, [one, other], 'two different families');
    });
    return input.pairs === null ? rest : { ...rest, ovensApart: input.pairs };
  });
}
