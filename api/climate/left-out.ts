// What of a sensor's readings was left out of its room's air, and why, in words.
import type { Context } from '../context.ts';
import type { Fault, Measure, SensorNearDay, Span } from './faults/fault.ts';
import { nearDay, spansLeftOut } from './rules.ts';
import { dayMs, hourMs, indexAt } from './series.ts';
import { readingsOf } from './stored.ts';

export interface SensorLeftOut {
  from: Date;
  until: Date;
  fault: Fault;
  measure: Measure;
  /** In a sentence, without the time. */
  why: string;
}

const units = { temperature: '°C', humidity: '% RH' };

function whyOf(span: Span): string {
  const value = `${span.value.toFixed(1)} ${units[span.measure]}`;
  if (span.fault === 'absurd') return `read ${value}, which room air cannot be`;
  if (span.fault === 'stuck') return `stuck at ${value} while the other sensors moved`;
  if (span.fault === 'carried in') return `came in from elsewhere at ${value} and had yet to take on the room's air`;
  const distance = `${Math.abs(span.value).toFixed(0)} ${span.measure === 'temperature' ? 'K' : '% RH'}`;
  const way = span.measure === 'temperature' ? ['warmer', 'colder'] : ['damper', 'drier'];
  return `${distance} ${way[span.value > 0 ? 0 : 1]} than the other sensors`;
}

/** Verdicts of several days on one sensor: those of one kind that touch or overlap are one. */
export function joinedSpans(spans: readonly Span[]): Span[] {
  const found: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = found.findLast((one) => one.fault === span.fault && one.measure === span.measure);
    if (last && span.fromMs <= last.untilMs + hourMs) {
      const worst = Math.abs(span.value) > Math.abs(last.value) ? span.value : last.value;
      const joined = { ...last, untilMs: Math.max(last.untilMs, span.untilMs), value: worst };
      found[found.indexOf(last)] = joined;
    } else {
      found.push(span);
    }
  }
  return found;
}

function verdicts(sensors: readonly SensorNearDay[], fromDay: number, untilDay: number): Span[] {
  const found: Span[] = [];
  for (let day = fromDay; day < untilDay; day++) {
    const start = day * dayMs;
    for (const span of spansLeftOut(
      day,
      sensors.map((sensor) => nearDay(day, sensor)),
    )) {
      const fromMs = Math.max(span.fromMs, start);
      const untilMs = Math.min(span.untilMs, start + dayMs - 1);
      if (fromMs <= untilMs) found.push({ ...span, fromMs, untilMs });
    }
  }
  return found;
}

/** By sensor: what was left out of the room's air on the UTC days of [fromDay, untilDay), as its blocks were made. */
export async function leftOutOf(
  { database }: Pick<Context, 'database'>,
  roomId: string,
  fromDay: number,
  untilDay: number,
): Promise<Map<string, SensorLeftOut[]>> {
  const sensors = await database.read.sensor.findMany({
    where: { roomId, setAsideWhy: null },
    select: { id: true },
    orderBy: { id: 'asc' },
  });
  const ids = sensors.map(({ id }) => id);
  const days = Array.from({ length: untilDay - fromDay + 2 }, (_, index) => fromDay - 1 + index);
  const readings = await readingsOf(database.read, ids, days);
  const spans = verdicts(readings, fromDay, untilDay);
  return new Map(
    ids.map((id, sensor) => {
      const own = joinedSpans(spans.filter((span) => span.sensor === sensor));
      const told = own.map((span) => {
        const { fault, measure, fromMs } = span;
        const { atMs } = readings[sensor]?.[measure] ?? { atMs: new Float64Array(0) };
        const last = atMs[indexAt(atMs, span.untilMs + 1) - 1] ?? span.untilMs;
        return { from: new Date(fromMs), until: new Date(last), fault, measure, why: whyOf(span) };
      });
      return [id, told] as const;
    }),
  );
}
