// How a container's history begins: came in, or filled from another.
import type { Start } from '../science/history.ts';
import { prior } from '../science/uncertainty.ts';
import type { Told } from './actions.ts';
import { lidOf } from './closure.ts';
import { type Parcel, unknownHandover } from './parcels.ts';

/** Types by which a container is made from another. */
const makers: ReadonlySet<string> = new Set(['PORTION_TAKEN', 'PLATES_TAKEN', 'COLUMN_PACKED']);

export const isBeginning = ({ role, type }: Pick<Told, 'role' | 'type'>): boolean =>
  role === 'own' ? type === 'CAME_IN' : makers.has(type);

/** Does the start need what another container handed over? */
export const isHandedOver = ({ role, type }: Pick<Told, 'role' | 'type'>): boolean =>
  role === 'filled' && (makers.has(type) || type === 'COMBINED');

/** The start told by the event that made the container; null when that event begins nothing. */
export function startOf(event: Told, parcel: Parcel | undefined, assumedWaterFraction: number): Start | null {
  const base = {
    atS: event.at / 1000,
    habit: null,
    scooping: 'top' as const,
    dryKg: (event.dryGrams ?? 0) / 1000,
    plates: event.plates ?? 1,
  };
  if (event.role === 'own' && event.type === 'CAME_IN') {
    const { startWaterFraction, bookedWaterFraction } = event.detail;
    const water: Start['water'] =
      startWaterFraction === null
        ? { kind: 'unknown', assumedWaterFraction: bookedWaterFraction }
        : { kind: 'known', waterFraction: startWaterFraction, sdLn: prior.start };
    return { ...base, room: event.detail.roomId, lid: lidOf(event.detail.closure), water };
  }
  const isFilling = event.type === 'PORTION_TAKEN' || event.type === 'PLATES_TAKEN' || event.type === 'COLUMN_PACKED';
  if (event.role === 'own' || !isFilling) return null;
  const { roomId, closure } = event.detail.into;
  const handover = parcel?.handover ?? unknownHandover(assumedWaterFraction);
  return { ...base, room: roomId, lid: lidOf(closure), water: { kind: 'handover', handover } };
}
