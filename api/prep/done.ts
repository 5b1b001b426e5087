// What a ticked step records: the event that belongs to it, on every container that is kept for its need. What is
// taken apart for the need is kept for it from then on.
import type { Context } from '../context.ts';
import type { PrepStep } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { happened } from '../stock/service.ts';
import type { Work } from '../work.ts';
import { detailOf } from './detail.ts';
import { type Doing, eachKept, noted } from './doing.ts';
import { platesApart } from './done-apart.ts';
import { equilibrated } from './done-equilibrated.ts';
import { handedOver } from './done-handed.ts';
import { ovenDone } from './done-oven.ts';
import { packed } from './done-packed.ts';
import type { How } from './tick.ts';

/** Records what a step says. */
export async function stepDone(
  work: Work,
  step: PrepStep,
  by: How & { at: Date },
  path: string,
  context: Context,
): Promise<{ events: string[]; notes: string[] }> {
  const need = await work.tx.need.findUniqueOrThrow({ where: { id: step.needId } });
  if (need.droppedAt) throw invalid(path, step.id, 'a step of a need that was not dropped');
  const detail = detailOf(step.detail);
  const doing: Doing = { work, need, step, detail, by, path, context, events: [], notes: [] };
  const { at } = by;
  const note = by.note ?? null;
  const ml = detail.solvents.reduce((sum, each) => sum + each.ml, 0);
  switch (step.kind) {
    case 'PRE_WASH':
      for (const container of await platesApart(doing)) {
        const said = {
          solvent: detail.mixture,
          fullLength: true,
          isMobilePhase: need.isForExtraction,
          tankLoads: step.load,
          mlPerLoad: ml,
        };
        noted(doing, await happened(work, { type: 'PRE_WASHED', container, at, note, said }));
      }
      break;
    case 'AIR_DRY':
      await eachKept(doing, (container) => happened(work, { type: 'SOLVENT_GONE', container, at, note, said: {} }));
      break;
    case 'OVEN':
      await ovenDone(doing);
      break;
    case 'EQUILIBRATE':
      await equilibrated(doing);
      break;
    case 'PACK':
      await packed(doing);
      break;
    case 'CONDITION':
      await eachKept(doing, (container) => {
        const said = {
          mobilePhase: detail.mixture,
          columnVolumes: detail.columnVolumes,
          minutes: detail.minutes,
          flowMlPerMin: detail.flowMlPerMin,
        };
        return happened(work, { type: 'CONDITIONED', container, at, note, said });
      });
      break;
    case 'HAND_OVER':
      await handedOver(doing);
      break;
    default:
      break;
  }
  return { events: doing.events, notes: doing.notes };
}
