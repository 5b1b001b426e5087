// From what was read to what is stored: each container brought forward to an instant. No writing here; runs in any thread.
import type { CheckpointRow, ExposureRow } from '../database/exposures.ts';
import type { FleetContainer } from '../database/fleet.ts';
import type { Reader } from '../database/reader.ts';
import { worthKeeping } from '../science/checkpoint.ts';
import { courseOf, foldExposure } from '../science/exposure.ts';
import type { Checkpoint, FoldInput } from '../science/history.ts';
import type { Grounds } from './ground.ts';
import { type Handed, handedBy, type Wait, waitOf } from './handed.ts';
import { foldInputOf, historyOf, type Known, specOf } from './history.ts';
import { withoutTaken } from './learned.ts';
import { type Reading, readingOf } from './reading.ts';
import { airWindowS, answerRow, unknownRow } from './row.ts';

/** What one container's estimate stores. */
export interface Estimate extends Handed {
  readonly containerId: string;
  /** Of the inputs it was made from. */
  readonly version: number;
  /** Null where it was brought only up to something it waits for. */
  readonly exposure: ExposureRow | null;
  /** It stays stale from that instant on, ms; null where it is up to date. */
  readonly staleFrom: number | null;
  readonly checkpoints: readonly CheckpointRow[];
  /** Checkpoints from this instant on were made of inputs that have changed, ms. */
  readonly dropFrom: number | null;
  /** Instants of older checkpoints that are no longer worth keeping, ms. */
  readonly thinned: readonly number[];
}

export interface Estimates {
  readonly estimates: Estimate[];
  readonly waits: Wait[];
}

export interface Task {
  readonly reader: Reader;
  readonly grounds: Grounds;
  readonly asOfMs: number;
  /** Events whose parcels were asked for, remembered from round to round. */
  readonly asked: Set<string>;
  /** Nobody can be waited for any longer: what did not arrive counts as unknown. */
  readonly unwaiting?: boolean;
  /** Runs between two containers, so that a thread that has other things to do can do them. */
  readonly pause?: () => Promise<void> | void;
}

const nothingHanded: Handed = { parcels: [], goneParcels: [], receivers: [] };

const rowsOf = (checkpoints: readonly Checkpoint[], labId: string, containerId: string): CheckpointRow[] =>
  checkpoints.map(({ atS, bytes }) => ({ labId, containerId, at: atS * 1000, data: bytes }));

/** The input of a fold up to an instant, or why there can be none. */
async function inputOf(
  container: FleetContainer,
  reading: Reading,
  grounds: Grounds,
  asOfMs: number,
): Promise<FoldInput | string> {
  const lot = (await grounds.lots([container.lotId])).get(container.lotId);
  if (!lot) return 'missing lot';
  const spec = specOf(container, lot, grounds);
  if (typeof spec === 'string') return spec;
  const events = withoutTaken(reading.events.get(container.id) ?? [], grounds.learned);
  const checkpoint = reading.checkpoints.get(container.id) ?? null;
  const known: Known = { container, lot, spec, events, parcels: reading.arrived, checkpoint };
  const asOfS = asOfMs / 1000;
  const history = historyOf(known, grounds, asOfS);
  if (!history || history.start.atS > asOfS) return 'nothing stands in its timeline yet';
  const fromS = Math.min(checkpoint?.atS ?? history.start.atS, asOfS - airWindowS);
  const airs = await grounds.airs(history.rooms, 1000 * fromS, asOfMs);
  return grounds.underLearned(foldInputOf(known, history, airs, grounds, asOfS), lot);
}

/** Brings a container up to just before an event that it waits for, so that what it handed over until then can go on. */
async function upTo(
  wait: Wait,
  container: FleetContainer,
  reading: Reading,
  { grounds }: Task,
): Promise<Estimate | null> {
  const asOfMs = wait.event.at - 1;
  const input = await inputOf(container, reading, grounds, asOfMs);
  if (typeof input === 'string') return null;
  const { checkpoints, departures } = courseOf(input);
  const { id: containerId, version, staleFrom } = container;
  const labId = grounds.lab.id;
  return {
    containerId,
    version: version ?? 0,
    exposure: null,
    staleFrom: wait.event.at,
    checkpoints: rowsOf(checkpoints, labId, containerId),
    dropFrom: staleFrom,
    thinned: [],
    ...handedBy(containerId, labId, departures, input.asOfS, reading),
  };
}

async function estimateOf(container: FleetContainer, reading: Reading, { grounds, asOfMs }: Task): Promise<Estimate> {
  const { id: containerId, version, staleFrom: dropFrom } = container;
  const labId = grounds.lab.id;
  const base = { containerId, version: version ?? 0, staleFrom: null, dropFrom };
  const input = await inputOf(container, reading, grounds, asOfMs);
  if (typeof input === 'string') {
    const target = (await grounds.lots([container.lotId])).get(container.lotId)?.target;
    const exposure = unknownRow(container, labId, asOfMs, target ?? { upper: null, lower: null, policy: 'dry' }, input);
    return { ...base, exposure, checkpoints: [], thinned: [], ...nothingHanded };
  }
  const output = foldExposure(input);
  return {
    ...base,
    exposure: answerRow(container, labId, asOfMs, input, output.answer),
    checkpoints: rowsOf(output.checkpoints, labId, containerId),
    thinned: (reading.older.get(containerId) ?? []).filter((at) => !worthKeeping(at / 1000, input.asOfS)),
    ...handedBy(containerId, labId, output.handovers, input.asOfS, reading),
  };
}

/** Brings containers forward to an instant. */
export async function estimatesOf(ids: readonly string[], task: Task): Promise<Estimates> {
  const reading = await readingOf(task.reader, ids, task.asOfMs);
  const lots = await task.grounds.lots(reading.containers.map(({ lotId }) => lotId));
  const estimates: Estimate[] = [];
  const waits: Wait[] = [];
  for (const container of reading.containers) {
    await task.pause?.();
    const lot = lots.get(container.lotId);
    // What cannot be estimated at all has nothing to wait for.
    const waiting = !task.unwaiting && lot && typeof specOf(container, lot, task.grounds) !== 'string';
    const wait = waiting ? waitOf(container, reading, task.asked) : null;
    if (wait) waits.push(wait);
    const made = wait ? await upTo(wait, container, reading, task) : await estimateOf(container, reading, task);
    if (made) estimates.push(made);
  }
  return { estimates, waits };
}
