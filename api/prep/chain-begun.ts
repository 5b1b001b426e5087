// Steps that are under way: they leave the stages, and what waits by itself after them stays where it was.
import type { PrepStep, PrepStepKind } from '../database/generated/sqlite/client.ts';
import type { PlannedStep, Stage } from '../science/prep/stages.ts';
import { detailOf } from './detail.ts';
import { amountOf, type NeedFacts } from './facts.ts';
import { minuteOf } from './hours.ts';
import { type Building, five } from './chain-building.ts';

/** So long a step that was not ticked is taken to be done as printed. */
const graceMs = 36 * 3_600_000;

/** Open steps whose time has come: under way, as printed, until somebody says otherwise. */
const underWay = ({ steps }: NeedFacts, now: Date): PrepStep[] =>
  steps.filter(
    ({ doneAt, goneAt, startAt, endAt }) =>
      !doneAt && !goneAt && startAt <= now && now.getTime() < endAt.getTime() + graceMs,
  );

const stepOf = ({ kind, load, loads, startAt, endAt, isAttended, detail }: PrepStep): PlannedStep => ({
  kind,
  load,
  loads,
  start: minuteOf(startAt),
  end: minuteOf(endAt),
  isAttended,
  ovenId: detailOf(detail).ovenId,
});

const lagOf = { WASH: 'AIR_DRY', OVEN: 'COOL', CONDITION: 'REST' } as const;

/** Takes what is under way out of the stages; what waits by itself after it stays where it was. */
export function withoutBegun(of: Building, facts: NeedFacts, now: Date): void {
  const begun = underWay(facts, now);
  const rowsOf = (kind: PrepStepKind) => begun.filter((row) => row.kind === kind);
  const stages: Stage[] = [];
  for (const stage of of.stages) {
    const rows = rowsOf(stage.kind === 'WASH' ? 'PRE_WASH' : stage.kind);
    if (rows.length === 0) {
      stages.push(stage);
      continue;
    }
    of.running.push(...rows.map(stepOf));
    const left = 'loads' in stage ? stage.loads.filter(({ load }) => !rows.some((row) => row.load === load)) : [];
    const ends = Math.max(...rows.map(({ endAt }) => minuteOf(endAt)));
    of.floor = Math.max(of.floor, five(ends));
    if (left.length > 0 && 'loads' in stage) {
      stages.push({ ...stage, loads: left });
      continue;
    }
    const lag = stage.kind in lagOf ? lagOf[stage.kind as keyof typeof lagOf] : null;
    const waits = facts.steps.find((row) => row.kind === lag && !row.doneAt && !row.goneAt);
    if (!waits) continue;
    const waiting = stepOf(waits);
    of.running.push(waiting);
    of.floor = Math.max(of.floor, five(waiting.end));
    if (stage.kind !== 'CONDITION') of.keepsFrom = of.floor;
    if (stage.kind === 'WASH') {
      of.takes.push({
        of: 'hood',
        from: Math.max(minuteOf(now), waiting.start),
        to: waiting.end,
        amount: amountOf(facts),
      });
    }
  }
  of.stages = stages;
}
