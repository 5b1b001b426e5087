// Each stage put as late as it can be, seen from the time at which the next one wants it; null where it does not fit.
import { earliestIn, holds, latestIn } from './intervals.ts';
import type { Ledger, OvenBatch } from './ledger.ts';
import type { Load, OvenStage, PlannedStep, PrepOven, Stage, StandStage, WashStage, WorkStage } from './stages.ts';

/** Times fall on full five minutes. */
export const gridMinutes = 5;
const down = (minute: number): number => Math.floor(minute / gridMinutes) * gridMinutes;
const up = (minute: number): number => Math.ceil(minute / gridMinutes) * gridMinutes;

/** A stage in its place; what comes before must be done by `from`. */
export interface Placed {
  readonly steps: readonly PlannedStep[];
  readonly from: number;
}

const step = (kind: PlannedStep['kind'], start: number, end: number, more: Partial<PlannedStep> = {}): PlannedStep => ({
  kind,
  load: 1,
  loads: 1,
  start,
  end,
  isAttended: false,
  ovenId: null,
  ...more,
});

function workPlaced(ledger: Ledger, stage: WorkStage, deadline: number, floor: number): Placed | null {
  const { open } = ledger.resources;
  const { kind, minutes, restMinutes } = stage;
  for (let end = down(deadline - restMinutes); end - minutes >= floor; end -= gridMinutes) {
    const last = latestIn(open, end);
    if (last === null) return null;
    end = down(last);
    const start = end - minutes;
    if (start < floor) return null;
    if (!ledger.isOpen(start, end) || !ledger.fits('hands', start, end, 1)) continue;
    ledger.take('hands', start, end, 1);
    const rest = restMinutes > 0 ? [step('REST', end, end + restMinutes)] : [];
    return { steps: [step(kind, start, end, { isAttended: true }), ...rest], from: start };
  }
  return null;
}

function standPlaced(ledger: Ledger, stage: StandStage, deadline: number, floor: number): Placed | null {
  const { open } = ledger.resources;
  const { kind, minutes, handsMinutes } = stage;
  for (let start = down(deadline - minutes); start >= floor; start -= gridMinutes) {
    const last = latestIn(open, start);
    if (last === null) return null;
    start = down(last);
    if (start < floor) return null;
    const busy = start + handsMinutes;
    if (!ledger.isOpen(start, busy) || !ledger.fits('hands', start, busy, 1)) continue;
    ledger.take('hands', start, busy, 1);
    return { steps: [step(kind, start, start + minutes)], from: start };
  }
  return null;
}

/** One load through the tank with its place in the hood until `until`, by `deadline`. */
function loadWashed(
  ledger: Ledger,
  stage: WashStage,
  { load, amount }: Load,
  deadline: number,
  floor: number,
  untilOf: (end: number) => number | null,
): { step: PlannedStep; until: number } | null {
  const { minutes, handsMinutes, ofLoads } = stage;
  for (let end = down(deadline); end - minutes >= floor; end -= gridMinutes) {
    const last = latestIn(ledger.resources.open, end);
    if (last === null) return null;
    end = down(last);
    const start = end - minutes;
    if (start < floor) return null;
    const until = untilOf(end);
    if (until === null || !ledger.isOpen(start, end)) continue;
    if (!ledger.fits('tank', start, end, 1) || !ledger.fits('hands', start, start + handsMinutes, 1)) continue;
    if (!ledger.fits('hood', end, until, amount)) continue;
    ledger.take('tank', start, end, 1);
    ledger.take('hands', start, start + handsMinutes, 1);
    ledger.take('hood', end, until, amount);
    return { step: step('PRE_WASH', start, end, { load, loads: ofLoads, isAttended: true }), until };
  }
  return null;
}

/** Loads of one need are not washed further apart than this. */
const washWithinMinutes = 3 * 1440;
/** Where the other loads do not fit, the last one is tried again so much earlier. */
const tryAgainMinutes = 15;

function washPlaced(ledger: Ledger, stage: WashStage, deadline: number, floor: number): Placed | null {
  const { open } = ledger.resources;
  const { loads, airDryMinutes, minutes } = stage;
  const [last, ...others] = [...loads].reverse();
  if (!last) return { steps: [], from: deadline };
  // In the end all of them are in the hood at once.
  const inHood = loads.reduce((sum, { amount }) => sum + amount, 0);
  if (!ledger.couldFit('hood', inHood)) return null;
  /** When somebody can take out what came from the tank at `end`; null where that is too late. */
  const outOf = (end: number): number | null => {
    const out = earliestIn(open, end + airDryMinutes);
    return out !== null && up(out) <= deadline ? up(out) : null;
  };
  for (let latest = deadline - airDryMinutes; latest - minutes >= floor; latest -= gridMinutes) {
    const mark = ledger.mark();
    const first = loadWashed(ledger, stage, last, latest, floor, outOf);
    if (!first) return null;
    const washed = [first.step];
    const earliest = Math.max(floor, first.step.end - washWithinMinutes);
    for (const load of others) {
      const next = loadWashed(ledger, stage, load, first.step.end, earliest, () => first.until);
      if (!next) break;
      washed.push(next.step);
    }
    if (washed.length === loads.length) {
      const from = Math.min(...washed.map(({ start }) => start));
      // Each load has its place in the hood from its own end on; the least hours count from the last.
      return { steps: [...washed.reverse(), step('AIR_DRY', first.step.end, first.until)], from };
    }
    ledger.backTo(mark);
    latest = first.step.end - tryAgainMinutes + gridMinutes;
  }
  return null;
}

const fitsOven = (oven: PrepOven, stage: OvenStage, amount: number): boolean =>
  amount <= oven.capacity &&
  (stage.ovens?.includes(oven.id) ?? true) &&
  (stage.isVacuum === null || stage.isVacuum === oven.isVacuum) &&
  Math.max(oven.temperatureC[0], stage.temperatureC[0]) <= Math.min(oven.temperatureC[1], stage.temperatureC[1]);

/** The latest stretch of an oven of its own; null where there is none. */
function ovenStretch(
  ledger: Ledger,
  oven: PrepOven,
  stage: OvenStage,
  deadline: number,
  floor: number,
): { start: number; end: number } | null {
  const { least, most, handsMinutes } = stage;
  for (let end = down(deadline); end - least >= floor; end -= gridMinutes) {
    const out = latestIn(oven.open, end);
    if (out === null) return null;
    end = down(out);
    // Loaded when somebody is there: earlier where it may stay longer.
    const loaded = latestIn(oven.open, end - least);
    if (loaded === null) return null;
    for (let start = down(loaded); start >= floor && end - start <= most; start -= gridMinutes) {
      if (!holds(oven.open, start, start + handsMinutes)) continue;
      if (!oven.isUnattended && !holds(oven.open, start, end)) break;
      if (!ledger.fits('hands', start, start + handsMinutes, 1)) continue;
      const other = ledger.inTheWay(oven, start, end);
      if (!other) return { start, end };
      // However late it were loaded, it would have to be out before that begins.
      if (other.to > loaded) end = Math.min(end, down(other.from) + gridMinutes);
      break;
    }
  }
  return null;
}

/** A load that goes in anyway at the same temperature, where there is still room. */
function joinable(ledger: Ledger, stage: OvenStage, amount: number, deadline: number, floor: number): OvenBatch[] {
  return ledger.batches.filter((batch) => {
    const oven = ledger.resources.ovens.find(({ id }) => id === batch.ovenId);
    const minutes = batch.end - batch.start;
    return (
      oven !== undefined &&
      !batch.isGiven &&
      fitsOven(oven, stage, amount + batch.amount) &&
      batch.temperatureC[0] === stage.temperatureC[0] &&
      batch.temperatureC[1] === stage.temperatureC[1] &&
      batch.end <= deadline &&
      batch.start >= floor &&
      minutes >= stage.least &&
      minutes <= stage.most
    );
  });
}

/** A load of its own is not begun for the sake of less than this. */
const joinWithinMinutes = 120;

function ovenLoaded(
  ledger: Ledger,
  stage: OvenStage,
  { load, amount }: Load,
  deadline: number,
  floor: number,
): PlannedStep | null {
  const { ofLoads: loads, temperatureC, handsMinutes } = stage;
  const given = stage.given?.find((each) => each.load === load);
  if (given && given.end <= deadline && given.start >= floor) {
    return step('OVEN', given.start, given.end, { load, loads, ovenId: given.ovenId });
  }
  let best: { oven: PrepOven; start: number; end: number } | null = null;
  for (const oven of ledger.resources.ovens) {
    if (!fitsOven(oven, stage, amount)) continue;
    const stretch = ovenStretch(ledger, oven, stage, deadline, floor);
    if (stretch && (!best || stretch.start > best.start)) best = { oven, ...stretch };
  }
  const join = joinable(ledger, stage, amount, deadline, floor).sort((a, b) => b.start - a.start)[0];
  if (join && (!best || join.start >= best.start - joinWithinMinutes)) {
    ledger.joinBatch(join, amount);
    return step('OVEN', join.start, join.end, { load, loads, ovenId: join.ovenId });
  }
  if (!best) return null;
  const { oven, start, end } = best;
  ledger.take('hands', start, start + handsMinutes, 1);
  ledger.addBatch({ ovenId: oven.id, start, end, temperatureC, amount, isGiven: false });
  return step('OVEN', start, end, { load, loads, ovenId: oven.id });
}

function ovenPlaced(ledger: Ledger, stage: OvenStage, deadline: number, floor: number): Placed | null {
  const { coolMinutes, loads } = stage;
  const steps: PlannedStep[] = [];
  for (const load of [...loads].reverse()) {
    const loaded = ovenLoaded(ledger, stage, load, deadline - coolMinutes, floor);
    if (!loaded) return null;
    steps.push(loaded);
  }
  if (steps.length === 0) return { steps: [], from: deadline };
  const out = Math.max(...steps.map(({ end }) => end));
  const cool = coolMinutes > 0 ? [step('COOL', out, out + coolMinutes)] : [];
  return { steps: [...steps.reverse(), ...cool], from: Math.min(...steps.map(({ start }) => start)) };
}

/** A stage as late as it can be, done by `deadline`, nothing of it before `floor`. What it takes stands in the ledger. */
export function placed(ledger: Ledger, stage: Stage, deadline: number, floor: number): Placed | null {
  switch (stage.kind) {
    case 'WASH':
      return washPlaced(ledger, stage, deadline, floor);
    case 'OVEN':
      return ovenPlaced(ledger, stage, deadline, floor);
    case 'EQUILIBRATE':
      return standPlaced(ledger, stage, deadline, floor);
    default:
      return workPlaced(ledger, stage, deadline, floor);
  }
}
