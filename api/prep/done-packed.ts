// A column packed from what is kept for its need, and kept for it.
import { invalid } from '../errors.ts';
import { columnFilled, needLetGo, packColumnSaid } from '../stock/service.ts';
import { type Doing, keptFor, keptIn, noted } from './doing.ts';

export async function packed(doing: Doing): Promise<void> {
  const { work, by, detail, path, step } = doing;
  const rows = await keptFor(doing);
  const [first, ...others] = rows;
  if (!first) throw invalid(path, step.id, 'a need with its sorbent kept; nothing is');
  if (others.length > 0) throw invalid(path, step.id, 'sorbent in one container: combine what is kept for it first');
  await needLetGo(work, doing.need.id, true);
  const said = {
    label: first.container.label,
    grams: first.dryGrams,
    basis: 'DRY',
    at: by.at,
    note: by.note,
    innerDiameterMm: detail.diameterMm,
    bedLengthMm: detail.bedLengthMm,
    closure: 'WELL_CLOSED',
  };
  const recorded = await columnFilled(work, packColumnSaid.parse(said));
  noted(doing, recorded);
  if (recorded.madeId) await keptIn(doing, [{ containerId: recorded.madeId, dryGrams: first.dryGrams, plates: null }]);
}
