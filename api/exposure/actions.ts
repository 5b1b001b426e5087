// A timeline in the words of the estimator: one event, none, one or two actions.
import type { FleetEvent } from '../database/fleet.ts';
import type { Action } from '../science/history.ts';
import type { DryingIsotherm } from '../science/tray/isotherm.ts';
import { storedCarried, type DetailOf, type Said } from '../stock/service.ts';
import { lidOf } from './closure.ts';
import { habitAt, type WorkingHours } from './hours.ts';
import { type Parcel, unknownHandover } from './parcels.ts';
import { airedOut, driedBy, observedBy, type OvenLoad } from './weighed.ts';

/** An event as one container sees it; its details were checked when it was written. */
export type Told = Omit<FleetEvent, 'type' | 'detail'> & Said;

export const toldOf = (row: FleetEvent): Told => row as Told;

export interface Telling {
  readonly isotherm: DryingIsotherm;
  readonly hours: WorkingHours;
  /** What arrived by an event; undefined where nothing is known of it. */
  readonly parcels: ReadonlyMap<string, Parcel>;
  readonly isPlates: boolean;
  readonly oven: OvenLoad;
  readonly dryGramsPerPlate: number;
  /** Dry grams that the container held just before an event. */
  readonly dryGramsBefore: (event: Told) => number;
  readonly assumedWaterFraction: number;
}

/** A scoop for a check lifts the lid for so long, s; as any scoop does. */
const scoopSeconds = 300;

function leaves(event: Told, openSeconds: number, telling: Telling): Action {
  const { eventId: id } = event;
  const atS = event.at / 1000;
  if (telling.isPlates) return { kind: 'plates taken', atS, id, plates: event.plates ?? 0, openSeconds };
  return { kind: 'taken', atS, id, dryKg: (event.dryGrams ?? 0) / 1000, openSeconds };
}

function poured(event: Told, opening: { openMinutes: number; leftOpen: boolean }, telling: Telling): Action[] {
  const taken = leaves(event, 60 * opening.openMinutes, telling);
  return opening.leftOpen ? [taken, { kind: 'opened', atS: taken.atS }] : [taken];
}

const scoopings = { TOP: 'top', SIDE: 'side', ROLLED: 'rolled' } as const;

const scooped = (atS: number, said: keyof typeof scoopings | null | undefined): Action[] =>
  said ? [{ kind: 'scooping', atS, scooping: scoopings[said] }] : [];

const emptied = (atS: number): Action => ({ kind: 'counted', atS, dryKg: 0, plates: 0 });

/** Where plates stand after the tank, the oven or the jar. */
function standing(atS: number, { after }: DetailOf<'DRIED' | 'EQUILIBRATED' | 'PRE_WASHED'>): Action[] {
  if (!after) return [];
  const closure = lidOf(after.closure);
  const lid: Action = closure === 'open' ? { kind: 'opened', atS } : { kind: 'closed', atS, closure };
  return [{ kind: 'moved', atS, room: after.roomId }, lid];
}

/** What an event is to the estimator. Those that say nothing of water, and a container's beginning, are nothing to it. */
export function actionsOf(event: Told, telling: Telling): Action[] {
  const atS = event.at / 1000;
  if (event.role === 'filled') {
    if (event.type === 'PLATES_TAKEN' && storedCarried.parse(event.carried)?.wettedAt) return [{ kind: 'wetted', atS }];
    if (event.type !== 'COMBINED') return [];
    const dryKg = (event.dryGrams ?? 0) / 1000;
    const handover = telling.parcels.get(event.eventId)?.handover ?? unknownHandover(telling.assumedWaterFraction);
    return [{ kind: 'combined', atS, parts: [{ dryKg, handover }] }];
  }
  switch (event.type) {
    case 'OPENED':
      return [{ kind: 'opened', atS }];
    case 'CLOSED': {
      const closure = lidOf(event.detail.closure);
      return [closure === 'open' ? { kind: 'opened', atS } : { kind: 'closed', atS, closure }];
    }
    case 'MOVED':
      return [{ kind: 'moved', atS, room: event.detail.roomId }];
    case 'PORTION_TAKEN':
      return [...scooped(atS, event.detail.scooping), ...poured(event, event.detail, telling)];
    case 'PLATES_TAKEN':
    case 'COLUMN_PACKED':
      return poured(event, event.detail, telling);
    case 'COMBINED':
      return [leaves(event, 0, telling)];
    case 'LOST':
      return [leaves(event, 0, telling)];
    case 'SPENT_ON_CHECK':
      return [leaves(event, scoopSeconds, telling)];
    case 'DISCARDED':
      return [event.detail.all ? emptied(atS) : leaves(event, 0, telling)];
    case 'USED_UP':
      return [emptied(atS)];
    case 'COUNTED': {
      if (!telling.isPlates) return [{ kind: 'counted', atS, dryKg: event.detail.dryGrams / 1000, plates: 1 }];
      const plates = event.detail.plates ?? 0;
      return [{ kind: 'counted', atS, dryKg: (plates * telling.dryGramsPerPlate) / 1000, plates }];
    }
    case 'MIXED':
      return [{ kind: 'mixed', atS }];
    case 'DRIED':
      return [driedBy(atS, event.detail, telling.isotherm, telling.oven), ...standing(atS, event.detail)];
    case 'EQUILIBRATED': {
      const { humidityPercent, temperatureC } = event.detail;
      return [
        { kind: 'equilibrated', atS, humidity: humidityPercent / 100, temperatureC },
        ...standing(atS, event.detail),
      ];
    }
    case 'WEIGHED':
      return [observedBy(atS, event.detail, telling.isotherm, telling.dryGramsBefore(event))];
    case 'HABIT_SET': {
      const { habit, scooping } = event.detail;
      const turn: Action[] =
        habit === undefined ? [] : [{ kind: 'habit', atS, habit: habitAt(habit, telling.hours, atS) }];
      return [...turn, ...scooped(atS, scooping)];
    }
    case 'PRE_WASHED':
      return [{ kind: 'wetted', atS }, ...standing(atS, event.detail)];
    case 'CONDITIONED':
    case 'TOUCHED_SOLVENT':
      return [{ kind: 'wetted', atS }];
    case 'SOLVENT_GONE':
      return [airedOut(atS, telling.isotherm)];
    case 'CAME_IN':
    case 'INTERRUPTED':
    case 'NOT_FOUND':
    case 'CORRECTED':
      return [];
  }
}
