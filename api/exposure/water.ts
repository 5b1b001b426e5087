// The water of a container at any instant, and how it came there: for booking grams, and for plots.
import type { Reader } from '../database/reader.ts';
import { courseOf } from '../science/exposure.ts';
import { handoverOf, scoopDepthM } from '../science/events.ts';
import type { FoldInput } from '../science/history.ts';
import { type Grounds, groundsOf, type LabFacts } from './ground.ts';
import { foldInputOf, historyOf, specOf } from './history.ts';
import { withoutTaken } from './learned.ts';
import { readingOf } from './reading.ts';

/** All that an estimate of one container at an instant is made from, from the checkpoint before `fromMs` on; null where there can be none. */
export async function foldInputAt(
  reader: Reader,
  lab: LabFacts,
  containerId: string,
  asOfMs: number,
  fromMs = asOfMs,
  shared: Grounds | null = null,
): Promise<{ input: FoldInput; grounds: Grounds } | null> {
  const grounds = shared ?? (await groundsOf(reader, lab));
  const reading = await readingOf(reader, [containerId], fromMs);
  const [container] = reading.containers;
  const lot = container && (await grounds.lots([container.lotId])).get(container.lotId);
  if (!container || !lot) return null;
  const spec = specOf(container, lot, grounds);
  if (typeof spec === 'string') return null;
  const checkpoint = reading.checkpoints.get(containerId) ?? null;
  const known = {
    container,
    lot,
    spec,
    events: withoutTaken(reading.events.get(containerId) ?? [], grounds.learned),
    parcels: reading.arrived,
    checkpoint,
  };
  const asOfS = asOfMs / 1000;
  const history = historyOf(known, grounds, asOfS);
  if (!history || history.start.atS > asOfS) return null;
  const airs = await grounds.airs(history.rooms, 1000 * (checkpoint?.atS ?? history.start.atS), asOfMs);
  return { input: grounds.underLearned(foldInputOf(known, history, airs, grounds, asOfS), lot), grounds };
}

/**
 * Water of the next scoop at an instant, kg/kg dry, after all that had happened until then; null where it is unknown.
 * Sees what the reader's transaction has written.
 */
export async function scoopWaterAt(
  reader: Reader,
  lab: LabFacts,
  containerId: string,
  at: Date,
  shared: Grounds | null = null,
): Promise<number | null> {
  const found = await foldInputAt(reader, lab, containerId, at.getTime(), at.getTime(), shared);
  if (!found) return null;
  const { condition } = courseOf(found.input);
  const { waterFraction, known } = handoverOf(condition, scoopDepthM(found.input.spec, condition));
  return known && !condition.wetted ? waterFraction : null;
}

/** The same of many containers and instants, all within a span of time: what they stand on is read once. */
export async function scoopWatersIn(
  reader: Reader,
  lab: LabFacts,
  span: { readonly from: Date; readonly until: Date },
): Promise<(containerId: string, at: Date) => Promise<number | null>> {
  const grounds = await groundsOf(reader, lab);
  const [from, until] = [span.from.getTime(), span.until.getTime()];
  const airs: Grounds['airs'] = (ids, fromMs, untilMs) =>
    grounds.airs(ids, Math.min(from, fromMs), Math.max(until, untilMs));
  return (containerId, at) => scoopWaterAt(reader, lab, containerId, at, { ...grounds, airs });
}
