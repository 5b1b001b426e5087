// What a load came to is kept with it, and the load that makes a request whole answers it.
import { requestAnswered, requestWaits } from '../drying/service.ts';
import type { Work } from '../work.ts';
import type { Booked } from './booked.ts';
import type { WholeLoad } from './run-rows.ts';

export async function loadKept(
  work: Work,
  load: WholeLoad,
  booked: Booked,
  water: number | null,
  isWeighed: boolean,
  events: string[],
) {
  await work.tx.dryingLoad.update({
    where: { id: load.id },
    data: { containerId: booked.container.id, events, waterFraction: water, isWeighed },
  });
}

const sum = (some: readonly (number | null)[]): number => some.reduce<number>((all, each) => all + (each ?? 0), 0);

/** The load that makes a request whole answers it; until then it waits. */
export async function settled(work: Work, load: WholeLoad, booked: Booked, at: Date): Promise<void> {
  const request = await work.tx.dryingRequest.findUniqueOrThrow({
    where: { id: load.requestId },
    include: { loads: { include: { run: true } } },
  });
  if (request.state === 'WITHDRAWN') return;
  const done = request.loads.filter(
    ({ id, run, containerId }) =>
      id === load.id ||
      run?.state === 'FINISHED' ||
      (run?.state === 'INTERRUPTED' && containerId !== null && containerId !== request.containerId),
  );
  const isAll =
    request.dryGrams === null
      ? request.plates !== null && sum(done.map(({ plates }) => plates)) >= request.plates
      : sum(done.map(({ dryGrams }) => dryGrams)) >= request.dryGrams - 1e-3;
  // What was dried where it is was all that is left.
  if (isAll || booked.madeId === null) await requestAnswered(work, request.id, booked.driedId, at);
  else await requestWaits(work, request.id);
}

/** Parts that are poured away come before the part that stays: so each finds its grams. */
export const inOrder = (loads: readonly WholeLoad[]): WholeLoad[] =>
  [...loads].sort((a, b) => Number(isWhole(a)) - Number(isWhole(b)) || a.part - b.part);
const isWhole = ({ request }: WholeLoad): boolean => request.dryGrams === null && request.plates === null;
