// The stories of all weighed containers from their beginnings, as if nothing had ever been learned: what a fit is made from.
// Handovers are reckoned anew here, so that what is learned rests on the timelines alone and never on an earlier fit.
import * as fleet from '../database/fleet.ts';
import type { FleetContainer, FleetEvent } from '../database/fleet.ts';
import type { Reader } from '../database/reader.ts';
import type { Weighed } from '../science/calibration/weighing.ts';
import { courseOf } from '../science/exposure.ts';
import type { Action, FoldInput } from '../science/history.ts';
import { type Told, toldOf } from './actions.ts';
import { groundsOf, type Grounds, type LabFacts, type LotGround } from './ground.ts';
import { foldInputOf, historyOf, specOf } from './history.ts';
import { withoutTaken } from './learned.ts';
import type { Parcel } from './parcels.ts';
import { isHandedOver } from './start.ts';

export type Observed = Extract<Action, { kind: 'observed' }>;

export interface Story {
  readonly containerId: string;
  readonly weighed: Weighed;
  /** Its timeline, weighings and all. */
  readonly events: readonly Told[];
  /** What a weighing by loss on drying or titration says, by its event. */
  readonly observed: ReadonlyMap<string, Observed>;
  /** Weighings before which nothing was known of the water: it begins anew with them. */
  readonly anew: ReadonlySet<string>;
}

export interface Stories {
  readonly stories: readonly Story[];
  /** Of lots that are in use, weighed or not. */
  readonly lots: readonly LotGround[];
  /** Weighed containers of which there can be no estimate, and why. */
  readonly untold: ReadonlyMap<string, string>;
}

interface Kept {
  readonly container: FleetContainer;
  readonly lot: LotGround;
  readonly events: readonly FleetEvent[];
}

/** A chain of containers filled from one another is no longer than this. */
const longestChain = 20;

/** These containers and all that they were filled from, with their whole timelines. */
async function read(reader: Reader, grounds: Grounds, ids: readonly string[]): Promise<Map<string, Kept>> {
  const kept = new Map<string, Kept>();
  let wanted = [...new Set(ids)];
  for (let round = 0; wanted.length > 0 && round < longestChain; round++) {
    const containers = await fleet.fleetContainers(reader, wanted);
    const rows = await fleet.eventsAfter(
      reader,
      wanted.map((id) => [id, -1] as const),
    );
    const lots = await grounds.lots(containers.map(({ lotId }) => lotId));
    for (const container of containers) {
      const lot = lots.get(container.lotId);
      const events = rows.filter(({ id }) => id === container.id);
      if (lot) kept.set(container.id, { container, lot, events });
    }
    const sources = rows.filter(isHandedOver).map(({ containerId }) => containerId);
    wanted = [...new Set(sources)].filter((id) => !kept.has(id));
  }
  return kept;
}

interface Telling {
  readonly grounds: Grounds;
  readonly parcels: ReadonlyMap<string, Parcel>;
}

/** A history up to an instant under nothing learned; or why there can be none. */
async function inputOf(kept: Kept, events: readonly FleetEvent[], asOfMs: number, telling: Telling) {
  const { grounds, parcels } = telling;
  const { container, lot } = kept;
  const spec = specOf(container, lot, grounds);
  if (typeof spec === 'string') return spec;
  const asOfS = asOfMs / 1000;
  const known = { container, lot, spec, events, parcels, checkpoint: null };
  const history = historyOf(known, grounds, asOfS);
  if (!history || history.start.atS > asOfS) return 'nothing stands in its timeline yet';
  const airs = await grounds.airs(history.rooms, 1000 * history.start.atS, asOfMs);
  return foldInputOf(known, history, airs, grounds, asOfS);
}

/** Each weighing that says something of the water, with what it says, in order. */
function observedIn(input: FoldInput, events: readonly FleetEvent[]): Map<string, Observed> {
  const weighings = events.filter(({ type, role }) => type === 'WEIGHED' && role === 'own');
  const said = input.actions.filter((action) => action.kind === 'observed');
  return new Map(weighings.flatMap(({ eventId }, i) => (said[i] ? [[eventId, said[i]] as const] : [])));
}

/** A history without the weighings that somebody says are wrong. */
function without(
  input: FoldInput,
  observed: ReadonlyMap<string, Observed>,
  isWrong: (id: string) => boolean,
): FoldInput {
  const wrong = new Set<Action>([...observed].flatMap(([id, action]) => (isWrong(id) ? [action] : [])));
  return wrong.size === 0 ? input : { ...input, actions: input.actions.filter((action) => !wrong.has(action)) };
}

/** What was handed over, reckoned round after round until nothing changes. */
async function handedOver(all: ReadonlyMap<string, Kept>, grounds: Grounds, isWrong: (eventId: string) => boolean) {
  const events = [...all.values()].flatMap((kept) => kept.events.filter(isHandedOver));
  const until = new Map<string, number>();
  for (const { containerId, at } of events) until.set(containerId, Math.max(at, until.get(containerId) ?? 0));
  const parcels = new Map<string, Parcel>();
  for (let round = 0; until.size > 0 && round < longestChain; round++) {
    const before = JSON.stringify([...parcels]);
    for (const id of [...until.keys()].sort()) {
      const kept = all.get(id);
      if (!kept) continue;
      const story = withoutTaken(kept.events, null);
      const input = await inputOf(kept, story, until.get(id) ?? 0, { grounds, parcels });
      if (typeof input === 'string') continue;
      const told = beganAnew(without(input, observedIn(input, story), isWrong)).input;
      for (const { id: eventId, dryKg, handover } of courseOf(told).departures) {
        parcels.set(eventId, { dryKg, handover });
      }
    }
    if (JSON.stringify([...parcels]) === before) break;
  }
  return parcels;
}

/**
 * Its weighings told apart: those before which nothing was known of the water stay in the history, the others go. Whether it was
 * known depends on no factor and on no other weighing.
 */
function beganAnew(input: FoldInput): { input: FoldInput; atS: ReadonlySet<number> } {
  const instantsS = [
    ...new Set(input.actions.flatMap(({ kind, atS }) => (kind === 'observed' && atS >= input.start.atS ? [atS] : []))),
  ];
  const atS = new Set<number>();
  let visited = 0;
  const last = instantsS.at(-1);
  if (last !== undefined) {
    courseOf(
      { ...input, asOfS: Math.min(input.asOfS, last) },
      {
        instantsS,
        told: ({ startKnown, airKnown, wetted }) => {
          const now = instantsS[visited++] ?? NaN;
          if (!startKnown || !airKnown || wetted) atS.add(now);
        },
      },
    );
  }
  const actions = input.actions.flatMap((action): Action[] => {
    if (action.kind !== 'observed') return [action];
    return atS.has(action.atS) ? [{ ...action, anew: true }] : [];
  });
  return { input: { ...input, actions }, atS };
}

/** The stories of these containers up to their last weighing. Weighings that somebody says are wrong have no part in them. */
export async function storiesOf(
  reader: Reader,
  lab: LabFacts,
  ids: readonly string[],
  lotIds: readonly string[],
  isWrong: (eventId: string) => boolean,
): Promise<Stories> {
  const grounds = await groundsOf(reader, lab, { untaught: true });
  const all = await read(reader, grounds, ids);
  const parcels = await handedOver(all, grounds, isWrong);
  const stories: Story[] = [];
  const untold = new Map<string, string>();
  for (const id of ids) {
    const kept = all.get(id);
    const last = kept?.events.findLast(({ type, role }) => type === 'WEIGHED' && role === 'own');
    if (!kept || !last) continue;
    const plain = withoutTaken(kept.events, null);
    const input = await inputOf(kept, plain, last.at, { grounds, parcels });
    const events = kept.events.map(toldOf);
    const [lot, pool] = [kept.lot.lot.id, kept.lot.pool];
    if (typeof input === 'string') {
      untold.set(id, input);
      continue;
    }
    const observed = observedIn(input, plain);
    const { input: told, atS } = beganAnew(without(input, observed, isWrong));
    const anew = [...observed].filter(([eventId, action]) => !isWrong(eventId) && atS.has(action.atS));
    stories.push({
      containerId: id,
      weighed: { input: told, lot, pool },
      events,
      observed,
      anew: new Set(anew.map(([eventId]) => eventId)),
    });
  }
  const lots = await grounds.lots(lotIds);
  return { stories, untold, lots: lotIds.flatMap((one) => lots.get(one) ?? []) };
}
