// What waits on the list was dried: all of the container, or some of it poured into one of its own and dried there.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import {
  happened,
  inOvenOf,
  inOvenSaid,
  nothingGrams,
  platesMoved,
  portionPoured,
  said,
  takePlatesSaid,
  takePortionSaid,
  type Recorded,
} from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { requestAnswered } from './request-ends.ts';
import { waitingRequest } from './request.ts';

export const driedSaid = takePortionSaid
  .pick({ at: true, note: true, clientKey: true, grams: true, basis: true, vessel: true, closure: true })
  .extend({
    id: z.string('the id of a request'),
    plates: said.plates,
    temperatureC: said.celsius.nullish(),
    minutes: said.minutes.nullish(),
    vacuum: z.boolean().nullish(),
    waterFraction: said.waterFraction.nullish(),
    ...inOvenSaid,
  });

type Dried = z.output<typeof driedSaid>;

/** Some of it goes into a container of its own; null when all of it was dried where it is. */
async function setApart(work: Work, container: Container, input: Dried): Promise<Recorded | null> {
  const { label, kind } = container;
  const { at, note, clientKey, grams, basis, plates, vessel, closure } = input;
  const shared = { label, at, note, clientKey, closure: closure ?? 'WELL_CLOSED' };
  if (kind === 'PLATE_BOX') {
    if (plates === null || plates === container.plates) return null;
    return platesMoved(work, takePlatesSaid.parse({ ...shared, plates }));
  }
  if (plates !== null) throw invalid('input.plates', plates, `grams: ${label} holds no plates`);
  if (grams === null) return null;
  if (basis === 'DRY' && Math.abs(grams - container.dryGrams) <= nothingGrams) return null;
  if (!vessel) throw missing('input.vessel', 'the vessel that holds what was dried; or no grams when it was all of it');
  return portionPoured(work, takePortionSaid.parse({ ...shared, grams, basis, vessel }));
}

/** Records the drying that a request waited for. */
export function requestDried(context: Context, input: Dried): Promise<Recorded> {
  return write(context, 'recordRequestedDrying', input, async (work) => {
    const { tx } = work;
    const request = await waitingRequest(work, input.id, 'input.id');
    const container = await tx.container.findUniqueOrThrow({ where: { id: request.containerId } });
    const apart = await setApart(work, container, input);
    const { temperatureC, minutes, vacuum, waterFraction, note } = input;
    const at = input.at ?? work.now;
    const dried = apart?.madeId ? await tx.container.findUniqueOrThrow({ where: { id: apart.madeId } }) : container;
    const recorded = await happened(work, {
      type: 'DRIED',
      container: dried,
      at,
      note,
      said: { temperatureC, minutes, vacuum, waterFraction, ...inOvenOf(input) },
    });
    await requestAnswered(work, request.id, recorded.eventId, at);
    const madeId = apart?.madeId ?? null;
    return { ...recorded, madeId, notes: [...(apart?.notes ?? []), ...recorded.notes] };
  });
}
