// A bench for the journeys of needs: a shelf with a box of plates, hours in which somebody works, and times on the lab's clock.
import { labClock } from '../../admin/say/time.ts';
import type { Served } from '../support/asked.ts';
import { hoursAgo, stockShelf } from './shelf.ts';

export const zone = 'Europe/Helsinki';
export const plateName = 'Glass plates 20 × 20';

/** A shelf with a box of so many plates; somebody is there from early to late on every day. Answers the box's label. */
export async function setBench(served: Served, plates: number): Promise<string> {
  await stockShelf(served);
  await served.tell('setLabSettings', {
    workingFrom: '06:00',
    workingTo: '22:00',
    workingDays: [1, 2, 3, 4, 5, 6, 7],
  });
  await served.tell('addSorbent', { name: plateName, sorbentClass: 'silica' });
  const { containers } = (await served.tell('receiveLot', {
    sorbent: plateName,
    lotNumber: 'P-066',
    receivedAt: hoursAgo(100),
    containers: [{ kind: 'PLATE_BOX', plates, room: 'wet bench' }],
  })) as { containers: { label: string }[] };
  return containers[0]?.label ?? '';
}

/** So many days from now at a time of the clock, as a field of date and time holds it. */
export const onDay = (days: number, clock: string): string =>
  `${labClock(new Date(Date.now() + days * 86_400_000), zone).slice(0, 10)}T${clock}`;

export const hoursFromNow = (hours: number): string => labClock(new Date(Date.now() + hours * 3_600_000), zone);
