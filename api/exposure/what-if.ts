// What would be, if: a stored container with things that have not happened, or a scenario of nothing but numbers.
import { z } from 'zod';
import { BadInput } from '../bad-input.ts';
import { estimate } from './scenario-estimate.ts';
import { scenarioOf } from './scenario.ts';
import { roomNamed } from '../climate/service.ts';
import type { Context } from '../context.ts';
import { invalid, missing, Refused, unknown } from '../errors.ts';
import { courseOf, foldExposure } from '../science/exposure.ts';
import type { Answer, State } from '../science/history.ts';
import { containerOf } from '../stock/service.ts';
import { loadOf } from './history.ts';
import { mostPoints, spread, waterAtEach, type WaterPoint } from './plot.ts';
import { supposedActions, type Step, type Supposed } from './supposed.ts';
import { foldInputAt } from './water.ts';

export interface Forecast {
  at: Date;
  state: State;
  meanWaterFraction: number;
  low: number;
  high: number;
  scoopWaterFraction: number;
  scoopLow: number;
  scoopHigh: number;
  topWaterFraction: number;
  chancePastLimit: number | null;
  hoursToLimit: number | null;
  reason: string;
}

export interface WhatIf {
  exposure: Forecast[];
  waterGainedGrams: number | null;
  /** Water from now on, until the end asked for or the last of the instants; null for a scenario. */
  course: ((points: number) => WaterPoint[]) | null;
}

export interface ContainerQuestion {
  label: string;
  events?: readonly Supposed[] | null | undefined;
  report: readonly Date[];
  until?: Date | null | undefined;
}

const dayMs = 86_400_000;
const mostDays = 90;
const mostReports = 50;
const forecastOf = (answer: Answer, at: Date): Forecast => ({
  at,
  state: answer.state,
  meanWaterFraction: answer.meanWaterFraction,
  low: answer.low,
  high: answer.high,
  scoopWaterFraction: answer.scoopWaterFraction,
  scoopLow: answer.scoopLow,
  scoopHigh: answer.scoopHigh,
  topWaterFraction: answer.topWaterFraction,
  chancePastLimit: answer.chancePastLimit,
  hoursToLimit: answer.hoursToLimit,
  reason: answer.reason,
});

function checkedInstant(at: Date, now: Date, path: string): number {
  const ms = at.getTime();
  // Clocks differ a little: what was now when it was asked still is.
  if (ms < now.getTime() - 60_000) {
    throw invalid(path, at.toISOString(), 'not before now; waterOverTime tells what was');
  }
  if (ms > now.getTime() + mostDays * dayMs) throw invalid(path, at.toISOString(), `at most ${mostDays} days ahead`);
  return Math.max(ms, now.getTime());
}

/** A stored container's exposure at each of the instants, if these things happened. */
export async function whatIfContainer(context: Context, question: ContainerQuestion): Promise<WhatIf> {
  const { database, lab } = context;
  const now = context.now();
  const path = 'container';
  const place = { tx: database.read, labId: lab.id };
  const container = await containerOf(place, question.label, `${path}.label`);
  const { report } = question;
  if (report.length === 0) throw missing(`${path}.report`, 'at least one instant');
  if (report.length > mostReports)
    throw invalid(`${path}.report`, `${report.length} instants`, `at most ${mostReports}`);
  const instants = report.map((at, i) => checkedInstant(at, now, `${path}.report.${i}`));
  const steps: Step[] = [];
  for (const [i, event] of (question.events ?? []).entries()) {
    const under = `${path}.events.${i}`;
    const atMs = checkedInstant(event.at ?? now, now, `${under}.at`);
    const room = event.room ? await roomNamed(place.tx, lab.id, event.room, `${under}.room`) : null;
    steps.push({ event, atS: atMs / 1000, roomId: room?.id ?? null, path: under });
  }
  const drawnMs = question.until ? checkedInstant(question.until, now, `${path}.until`) : Math.max(...instants);
  const untilMs = Math.max(drawnMs, ...instants);
  const found = await foldInputAt(database, lab, container.id, untilMs, now.getTime());
  if (!found) throw invalid(`${path}.label`, question.label, 'a container whose water can be estimated');
  const { input, grounds } = found;
  const numbers = (await grounds.lots([container.lotId])).get(container.lotId)?.numbers;
  if (!numbers || typeof numbers === 'string') throw invalid(`${path}.label`, question.label, 'a sorbent with numbers');
  const rooms = steps.flatMap(({ roomId }) => (roomId ? [roomId] : []));
  const elsewhere = await grounds.airs(rooms, now.getTime(), untilMs);
  const airs = new Map([...input.airs, ...elsewhere]);
  const supposed = steps.flatMap((step) => supposedActions(step, { numbers, load: loadOf(input.spec, numbers) }));
  const actions = [...input.actions, ...supposed].sort((one, other) => one.atS - other.atS);
  const ahead = { ...input, airs, actions };
  const answers = instants.map((ms) => ({ ms, ...foldExposure({ ...ahead, asOfS: ms / 1000 }) }));
  const nowS = now.getTime() / 1000;
  const gainedNow = courseOf({ ...input, asOfS: nowS }).condition.gainedKg;
  const last = answers.reduce((latest, one) => (one.ms > latest.ms ? one : latest));
  return {
    exposure: answers.map(({ ms, answer }) => forecastOf(answer, new Date(ms))),
    waterGainedGrams: 1000 * (last.waterGainedKg - gainedNow),
    course: (points) => {
      if (points < 2 || points > mostPoints) throw invalid('points', points, `from 2 to ${mostPoints}`);
      return waterAtEach({ ...ahead, asOfS: drawnMs / 1000 }, spread(nowS, drawnMs / 1000, points));
    },
  };
}

/** What the estimate command prints. */
interface Estimated {
  exposure: (Omit<Forecast, 'at'> & { at: string })[];
  waterGainedGrams: number;
}

const readings = z.array(z.object({ at: z.number(), temperatureC: z.number(), humidityPercent: z.number() }));

function refusedBy(error: BadInput): Refused {
  const [, kind, path = '', rest = ''] = /^(invalid|unknown|missing) ([^:,]+)[:,] (.*)$/s.exec(error.message) ?? [];
  const expected = rest.replace(/^.*?expected /s, '');
  return new Refused(error.message.replace(`${kind} `, `${kind} scenario.`), `scenario.${path}`, expected);
}

/** A free scenario: the estimate command's own input, as checked by it. */
export function whatIfScenario(raw: unknown): WhatIf {
  try {
    const scenario = scenarioOf(raw);
    const climate = readings.parse(scenario.climate);
    const air = climate.map(({ at, temperatureC, humidityPercent }) => ({
      atS: at,
      temperatureC,
      humidity: humidityPercent / 100,
    }));
    const { exposure, waterGainedGrams } = estimate(scenario, air) as Estimated;
    return { exposure: exposure.map((one) => ({ ...one, at: new Date(one.at) })), waterGainedGrams, course: null };
  } catch (error) {
    throw error instanceof BadInput ? refusedBy(error) : error;
  }
}

/** Exactly one of the two must be asked. */
export async function whatIf(
  context: Context,
  asked: { container?: ContainerQuestion | null; scenario?: unknown },
): Promise<WhatIf> {
  if (asked.container && asked.scenario) throw unknown('scenario', 'both', 'a container or a scenario, not both');
  if (asked.container) return whatIfContainer(context, asked.container);
  if (asked.scenario) return whatIfScenario(asked.scenario);
  throw missing('container', 'a container or a scenario');
}
