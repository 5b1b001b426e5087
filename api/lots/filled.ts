// What the server knows of a run better than who made it: the air of its room, how its plates were prepared, and the water
// that was estimated in them at that time. All of it is read before anything is written; what many runs share is read once.
import { airsIn, roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { Container, Person } from '../database/generated/sqlite/client.ts';
import { scoopWatersIn } from '../exposure/service.ts';
import { onceEach } from '../once.ts';
import { baseOf, checkNotFuture, containerOf, personOf, regimeColumns, standAt, timelineOf } from '../stock/service.ts';
import type { RunSaid } from './said.ts';

const hourMs = 3_600_000;

export interface Around {
  readonly container: Container | null;
  readonly at: Date;
  readonly temperatureC: number | null;
  readonly humidityPercent: number | null;
  readonly isAirFilled: boolean;
  /** Who ran it; null where nobody was named. */
  readonly by: Person | null;
  readonly prepared: Prepared;
}

interface Prepared {
  /** Null: it was not prepared. */
  readonly regime: NonNullable<RunSaid['regime']> | null;
  readonly hoursPrepared: number | null;
  readonly waterFraction: number | null;
  readonly isWaterFilled: boolean;
}

const rounded = (value: number | undefined): number | null => (value === undefined ? null : Number(value.toFixed(2)));

/** Finds what is around runs that are told together, made at these times. */
export function aroundsOf(context: Context, times: readonly Date[]): (run: RunSaid, path: string) => Promise<Around> {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  const now = context.now();
  const first = (said: string): string => said;
  const containerNamed = onceEach((label: string, path: string) => containerOf(place, label, path), first);
  const personNamed = onceEach((name: string, path: string) => personOf(place, name, path), first);
  const roomIdNamed = onceEach(async (name: string, path: string) => {
    return (await roomNamed(place.tx, lab.id, name, path)).id;
  }, first);
  const timelineIn = onceEach((containerId: string) => timelineOf(database.read, containerId));
  const stamps = [now, ...times].map((at) => at.getTime());
  const span = { from: new Date(Math.min(...stamps)), until: new Date(Math.max(...stamps)) };
  const airIn = airsIn(context, span);
  const waters = onceEach(() => scoopWatersIn(database, lab, span));
  const waterIn = onceEach(
    async (containerId: string, at: Date) => (await waters())(containerId, at),
    (containerId, at) => `${containerId} ${at.getTime()}`,
  );

  /** How its plate was, as it was said or as its container stood then. What is only taken for granted is not filled in. */
  async function preparedOf(run: RunSaid, container: Container | null, at: Date): Promise<Prepared> {
    const stand = container && standAt(baseOf(container), await timelineIn(container.id), at);
    const then = stand && regimeColumns(stand);
    const since = then?.preparedAt ?? null;
    const water = container && run.waterFraction == null ? await waterIn(container.id, at) : null;
    // The estimate's arithmetic may end a rounding below nothing.
    const filled = water === null ? null : Math.max(0, water);
    return {
      regime: run.regime ?? then?.regime ?? null,
      hoursPrepared: since ? (at.getTime() - since.getTime()) / hourMs : null,
      waterFraction: run.waterFraction ?? filled,
      isWaterFilled: filled !== null,
    };
  }

  return async (run, path) => {
    const at = run.at ?? now;
    checkNotFuture(at, now, `${path}.at`);
    const container = run.label ? await containerNamed(run.label, `${path}.label`) : null;
    const room = run.room ? await roomIdNamed(run.room, `${path}.room`) : container?.roomId;
    const isAsked = run.temperatureC == null || run.humidityPercent == null;
    const air = room && isAsked ? await airIn(room, at) : null;
    return {
      ...{ container, at, isAirFilled: air !== null },
      temperatureC: run.temperatureC ?? rounded(air?.temperatureC),
      humidityPercent: run.humidityPercent ?? rounded(air?.humidityPercent),
      by: run.by ? await personNamed(run.by, `${path}.by`) : null,
      prepared: await preparedOf(run, container, at),
    };
  };
}
