// What is known of a room's sensors: how much they read, until when, and whether they count.
import type { Context } from '../context.ts';
import type { Sensor } from '../database/generated/sqlite/client.ts';
import { leftOutOf, type SensorLeftOut } from './left-out.ts';
import { onceARequest } from '../once.ts';
import { dayMs } from './series.ts';
import { readingsOf } from './stored.ts';

export interface SensorFacts {
  readings: number;
  lastMs: number | null;
}

interface FactRow {
  sensorId: string;
  count: number;
  lastDay: number;
}

const factsStatement = `select s."id" as "sensorId", sum(r."count") as "count", max(r."day") as "lastDay"
  from "Sensor" s join "ReadingDay" r on r."sensorId" = s."id" where s."roomId" = $1 group by s."id"`;

/** Of each sensor of a room that ever read anything. */
export const sensorFacts = onceARequest(readFacts);

async function readFacts({ database }: Context, roomId: string): Promise<Map<string, SensorFacts>> {
  const rows = await database.select<FactRow>(factsStatement, [roomId]);
  const days = rows.map(({ lastDay }) => lastDay);
  const readings = await readingsOf(
    database.read,
    rows.map(({ sensorId }) => sensorId),
    days,
  );
  return new Map(
    rows.map(({ sensorId, count }, index) => {
      const { temperature, humidity } = readings[index] ?? {};
      const last = Math.max(temperature?.atMs.at(-1) ?? -Infinity, humidity?.atMs.at(-1) ?? -Infinity);
      return [sensorId, { readings: Number(count), lastMs: Number.isFinite(last) ? last : null }];
    }),
  );
}

/** Days back in which a present fault's beginning is looked for. */
const lookBackDays = 30;

const lately = onceARequest(async (context: Context, roomId: string) => {
  const facts = await sensorFacts(context, roomId);
  const last = Math.max(...[...facts.values()].map(({ lastMs }) => lastMs ?? -Infinity));
  const day = Math.floor(last / dayMs);
  return Number.isFinite(day)
    ? leftOutOf(context, roomId, day - lookBackDays, day + 1)
    : new Map<string, SensorLeftOut[]>();
});

/** Why a sensor does not count at present: what somebody said, or a fault that its last reading is in. */
export async function asideWhy(context: Context, sensor: Sensor): Promise<string | null> {
  if (sensor.setAsideWhy !== null) return sensor.setAsideWhy;
  const last = (await sensorFacts(context, sensor.roomId)).get(sensor.id)?.lastMs ?? null;
  const spans = (await lately(context, sensor.roomId)).get(sensor.id) ?? [];
  const present = spans.find(({ until }) => last !== null && until.getTime() >= last);
  return present ? `${present.why}, since ${sinceText(present.from, context.lab.timeZone)}` : null;
}

function sinceText(at: Date, timeZone: string): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short', timeZone }).format(at);
}
