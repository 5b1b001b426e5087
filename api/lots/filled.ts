// What the server knows of a run better than who made it: the air of its room, how its plates were prepared, and the water
// that was estimated in them at that time.
import { airAt, roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import type { Container } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { containerOf, waterAt } from '../stock/service.ts';
import type { Work } from '../work.ts';
import type { RunSaid } from './said.ts';

const hourMs = 3_600_000;

export interface Around {
  readonly container: Container | null;
  readonly at: Date;
  readonly temperatureC: number | null;
  readonly humidityPercent: number | null;
  readonly isAirFilled: boolean;
}

/** Read before anything is written: where it was run, and the air there. */
export async function aroundOf(context: Context, run: RunSaid, path: string): Promise<Around> {
  const { database, lab } = context;
  const place = { tx: database.read, labId: lab.id };
  const at = run.at ?? context.now();
  if (at.getTime() > context.now().getTime() + 60_000)
    throw invalid(`${path}.at`, at.toISOString(), 'not later than now');
  const container = run.label ? await containerOf(place, run.label, `${path}.label`) : null;
  const room = run.room ? (await roomNamed(place.tx, lab.id, run.room, `${path}.room`)).id : container?.roomId;
  const isAsked = run.temperatureC == null || run.humidityPercent == null;
  const air = room && isAsked ? await airAt(context, room, at) : null;
  const rounded = (value: number | undefined): number | null => (value === undefined ? null : Number(value.toFixed(2)));
  return {
    container,
    at,
    temperatureC: run.temperatureC ?? rounded(air?.temperatureC),
    humidityPercent: run.humidityPercent ?? rounded(air?.humidityPercent),
    isAirFilled: air !== null,
  };
}

export interface Prepared {
  readonly regime: RunSaid['regime'];
  readonly hoursPrepared: number | null;
  readonly waterFraction: number | null;
  readonly isWaterFilled: boolean;
}

/** How its plate was, as it was said or as its container stood then. What is only taken for granted is not filled in. */
export async function preparedAt(work: Work, run: RunSaid, { container, at }: Around): Promise<Prepared> {
  const since = container?.preparedAt && container.preparedAt <= at ? container.preparedAt : null;
  const water = container && run.waterFraction == null ? await waterAt(work.tx, container, at) : null;
  const filled = water && !water.assumed ? water.waterFraction : null;
  return {
    regime: run.regime ?? (since ? (container?.regime ?? null) : null),
    hoursPrepared: since ? (at.getTime() - since.getTime()) / hourMs : null,
    waterFraction: run.waterFraction ?? filled,
    isWaterFilled: filled !== null,
  };
}
