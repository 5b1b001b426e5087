// What another band would change: the containers of a sorbent or a lot judged by it, with nothing written.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { ExposureState } from '../database/generated/sqlite/client.ts';
import { bandOf, bandSaid, lotNamed, said, sorbentOf } from '../stock/service.ts';
import { estimatesOf } from './estimate.ts';
import { type Grounds, groundsOf } from './ground.ts';
import { targetOf } from './target.ts';

/** More are not judged for a preview; about a second. */
const mostJudged = 200;

export const bandChangeSaid = z.object({ sorbent: said.name, lotNumber: said.name.nullish(), ...bandSaid });

export interface Changed {
  label: string;
  before: ExposureState;
  after: ExposureState;
}

export interface BandChange {
  /** Containers in use that the band is for. */
  containers: number;
  judged: number;
  changed: Changed[];
  upperWaterFraction: number | null;
  lowerWaterFraction: number | null;
}

/** Refuses a band that does not go together, as setting it would. */
export async function bandChange(context: Context, input: z.output<typeof bandChangeSaid>): Promise<BandChange> {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  const sorbent = await sorbentOf(place, input.sorbent);
  const lot = input.lotNumber ? await lotNamed(place, sorbent.id, input.lotNumber) : null;
  const band = await bandOf(place, input, sorbent.sorbentClass);
  const containers = await database.read.container.findMany({
    where: {
      isVoid: false,
      finishedAt: null,
      // A lot with a target of its own does not go by its sorbent's.
      lot: lot ? { id: lot.id } : { sorbentId: sorbent.id, targetPolicy: null },
    },
    select: { id: true, label: true, lotId: true, exposure: { select: { state: true } } },
    orderBy: { cameInAt: 'desc' },
  });
  const some = containers.slice(0, mostJudged);
  const lotIds = new Set(some.map(({ lotId }) => lotId));
  const before = await groundsOf(database, lab);
  const grounds: Grounds = {
    ...before,
    async lots(ids) {
      const known = await before.lots(ids);
      return new Map(
        [...known].map(([id, ground]) => [
          id,
          lotIds.has(id) ? { ...ground, target: targetOf({ ...ground.lot, ...band }) } : ground,
        ]),
      );
    },
  };
  const asOfMs = context.now().getTime();
  const ids = some.map(({ id }) => id);
  const { estimates } = await estimatesOf(ids, {
    reader: database,
    grounds,
    asOfMs,
    asked: new Set(),
    unwaiting: true,
  });
  const after = new Map(estimates.map(({ containerId, exposure }) => [containerId, exposure]));
  const changed = some.flatMap(({ id, label, exposure }): Changed[] => {
    const now = after.get(id);
    return now && exposure && now.state !== exposure.state ? [{ label, before: exposure.state, after: now.state }] : [];
  });
  const first = lot ? (await before.lots([lot.id])).get(lot.id) : undefined;
  const ends = targetOf({
    sorbentClass: sorbent.sorbentClass,
    certificateWaterFraction: first?.lot.certificateWaterFraction ?? null,
    ...band,
  });
  return {
    containers: containers.length,
    judged: some.length,
    changed,
    upperWaterFraction: ends.upper,
    lowerWaterFraction: ends.lower,
  };
}
