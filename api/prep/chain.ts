// A need as the planner takes it: what is still to do, from when on, and what goes on meanwhile.
import type { PrepStep, PrepStepKind } from '../database/generated/sqlite/client.ts';
import { restMinutes } from '../science/columns/conditioning.ts';
import { earliestIn } from '../science/prep/intervals.ts';
import { loadsOf } from '../science/prep/loads.ts';
import type { PlannedStep, PrepNeed, PrepResources, Stage } from '../science/prep/stages.ts';
import { goneFromMs, leastHoodHoursOf } from '../stock/service.ts';
import { detailOf } from './detail.ts';
import { amountOf, type NeedFacts, type PrepFacts } from './facts.ts';
import { minuteOf } from './hours.ts';
import { isGoodAt } from './rules.ts';
import type { OvenSpan } from './ovens.ts';
import { isWashedFor } from './washed-in.ts';

const five = (minutes: number): number => Math.ceil(minutes / 5) * 5;

/** Somebody's hands at a tank or an oven, and at handing over (invented; common practice at most). */
const handsMinutes = 10;
const handOverMinutes = 5;
/** Depth of a tray where the recipe says none, mm. */
const usualDepthMm = 10;

export interface Chain {
  prep: PrepNeed;
  /** Steps that were begun and end by themselves, or were done without a tick of their own. */
  running: PlannedStep[];
  /** What the timeline says was done, by kind, with when. */
  done: Map<PrepStepKind, Date>;
  /** It may not go to the oven yet. */
  isWet: boolean;
}

const running = (kind: PlannedStep['kind'], start: number, end: number): PlannedStep => ({
  kind,
  load: 1,
  loads: 1,
  start,
  end: Math.max(start, end),
  isAttended: false,
  ovenId: null,
});

const latest = (dates: readonly (Date | null)[]): Date | null =>
  dates.reduce<Date | null>((last, date) => (date && (!last || date > last) ? date : last), null);

/** cm² of oven shelf for an amount, at a tray depth in mm. */
export function ovenArea(facts: NeedFacts, amount: number): number {
  const { need, kept, how } = facts;
  const [first] = kept;
  if (need.kind === 'PLATES') {
    const { plateWidthMm = null, plateHeightMm = null } = first?.container ?? {};
    return amount * (((plateWidthMm ?? 200) * (plateHeightMm ?? 200)) / 100);
  }
  const gramsPerMl = 0.5;
  return amount / gramsPerMl / ((how.recipe?.depthMm ?? usualDepthMm) / 10);
}

function ovenStage(
  facts: NeedFacts,
  amount: number,
  resources: PrepResources,
  spans: readonly OvenSpan[],
): Stage | null {
  const { recipe } = facts.how;
  if (!recipe) return null;
  const isVacuum = facts.need.kind === 'PLATES' && recipe.dries !== 'glass' ? null : recipe.vacuum;
  // Loads as large as fits into the largest oven that may take them at all.
  const fits = resources.ovens.filter((oven) => isVacuum === null || oven.isVacuum === isVacuum);
  const largest = Math.max(1, ...fits.map(({ capacity }) => capacity));
  const loads = loadsOf(ovenArea(facts, amount), largest);
  const heated = five(recipe.heatUpMinutes);
  return {
    kind: 'OVEN',
    loads,
    ofLoads: loads.length,
    least: heated + five(recipe.minutes[0]),
    most: heated + five(recipe.minutes[1]) + 5,
    temperatureC: recipe.temperatureC,
    isVacuum,
    handsMinutes,
    coolMinutes: five(recipe.coolDownMinutes),
    given: spans
      .filter(({ needId }) => needId === facts.need.id)
      .map(({ load, ovenId, start, end }) => ({ load, ovenId, start, end })),
  };
}

interface Building {
  stages: Stage[];
  running: PlannedStep[];
  takes: PrepNeed['takes'][number][];
  done: Map<PrepStepKind, Date>;
  floor: number;
  keepsFrom: number | null;
}

/** The wash, the hood and what they leave to do. True where the plates are dry of solvent and clean. */
function washing(of: Building, facts: NeedFacts, { settings, now, lab }: PrepFacts, { open }: PrepResources): boolean {
  const { need, kept, steps } = facts;
  if (need.kind !== 'PLATES' || !need.isPreWashed) return true;
  const washedAll = kept.length > 0 && kept.every(({ prepared }) => isWashedFor(need, prepared));
  const loads = loadsOf(amountOf(facts), settings.tankPlates);
  const ticked = new Set(steps.filter(({ kind, doneAt }) => kind === 'PRE_WASH' && doneAt).map(({ load }) => load));
  const wetAt = latest(kept.map(({ container }) => container.wettedAt));
  // Loads that were ticked one by one; a wash told without them counts for all.
  const left = washedAll ? (ticked.size === 0 ? [] : loads.filter(({ load }) => !ticked.has(load))) : loads;
  const airDryMinutes = five(leastHoodHoursOf(lab.settings) * 60);
  const nowMinute = minuteOf(now);
  if (left.length > 0) {
    const hoodEnd = nowMinute + airDryMinutes;
    if (wetAt)
      of.takes.push({
        of: 'hood',
        from: nowMinute,
        to: hoodEnd,
        amount: amountOf(facts) - left.reduce((sum, { amount }) => sum + amount, 0),
      });
    of.stages.push({
      kind: 'WASH',
      loads: left,
      ofLoads: loads.length,
      minutes: five(settings.preWashMinutes),
      handsMinutes,
      airDryMinutes,
    });
    return false;
  }
  of.done.set(
    'PRE_WASH',
    latest(kept.map(({ prepared }) => (prepared?.preWash ? new Date(prepared.preWash.at) : null))) ?? now,
  );
  if (!wetAt) {
    const goneAt = latest(
      kept.map(({ prepared }) => (prepared?.solventGone ? new Date(prepared.solventGone.at) : null)),
    );
    if (goneAt) {
      of.done.set('AIR_DRY', goneAt);
      of.keepsFrom = of.floor;
    }
    return true;
  }
  const wet = kept.map(({ container }) => container);
  const hoodAt = minuteOf(latest(wet.map(({ hoodAt, wettedAt }) => hoodAt ?? wettedAt)) ?? now);
  const goneFrom = Math.max(
    ...wet.map(({ wettedAt, hoodAt }) =>
      Math.ceil(goneFromMs({ wettedAt, hoodAt }, leastHoodHoursOf(lab.settings)) / 60_000),
    ),
  );
  const out = Math.max(goneFrom, earliestIn(open, five(goneFrom)) ?? goneFrom);
  of.running.push(running('AIR_DRY', hoodAt, out));
  of.takes.push({ of: 'hood', from: nowMinute, to: Math.max(out, nowMinute + 5), amount: amountOf(facts) });
  of.floor = Math.max(of.floor, five(out));
  of.keepsFrom = of.floor;
  return false;
}

/** The oven and its cooling. */
function drying(
  of: Building,
  facts: NeedFacts,
  resources: PrepResources,
  spans: readonly OvenSpan[],
  isClean: boolean,
): void {
  const { need, kept, how } = facts;
  const isPlates = need.kind === 'PLATES';
  const isPacked = kept.some(({ container }) => container.kind === 'COLUMN');
  if (isPacked) return;
  const dried = ({ prepared, driedAt, container }: (typeof kept)[number]): Date | null => {
    if (!isPlates) return driedAt;
    const at = prepared?.activation?.at ?? prepared?.equilibration?.at;
    if (at === undefined || !isClean) return null;
    const since = new Date(at);
    return since >= need.madeAt || isGoodAt(container.exposure, need.at, need.limitWaterFraction) ? since : null;
  };
  const wet = kept.filter(
    (one) => !dried(one) && (isPlates || !isGoodAt(one.container.exposure, need.at, need.limitWaterFraction)),
  );
  if (wet.length > 0 || kept.length === 0) {
    const amount = kept.length === 0 && isPlates ? amountOf(facts) : wet.reduce((sum, one) => sum + one.amount, 0);
    const stage = amount > 0 ? ovenStage(facts, amount, resources, spans) : null;
    if (stage) of.stages.push(stage);
    return;
  }
  const driedAt = latest(kept.map(dried));
  if (!driedAt) return;
  of.done.set('OVEN', driedAt);
  const cooled = minuteOf(driedAt) + five(how.recipe?.coolDownMinutes ?? 0);
  of.running.push(running('COOL', minuteOf(driedAt), cooled));
  of.floor = Math.max(of.floor, five(cooled));
  of.keepsFrom = of.floor;
}

function equilibrating(of: Building, { need, kept }: NeedFacts, { settings }: PrepFacts): void {
  if (need.regime !== 'EQUILIBRATED') return;
  const at = latest(kept.map(({ prepared }) => (prepared?.equilibration ? new Date(prepared.equilibration.at) : null)));
  if (at && kept.every(({ prepared }) => prepared?.equilibration)) {
    of.done.set('EQUILIBRATE', at);
    of.keepsFrom = null;
    return;
  }
  const inRoom = need.regimeHumidityPercent === null ? kept[0]?.container.exposure?.minutesToRoomEquilibrium : null;
  of.stages.push({ kind: 'EQUILIBRATE', minutes: five(inRoom ?? settings.equilibrateMinutes), handsMinutes });
}

function packing(of: Building, facts: NeedFacts, { settings }: PrepFacts): void {
  const { need, column, kept, sorbentClass } = facts;
  if (need.kind !== 'COLUMN' || !column) return;
  const packed = kept.find(({ container }) => container.kind === 'COLUMN');
  const rest = sorbentClass === 'alumina' ? five(restMinutes(column.diameterMm)) : 0;
  if (!packed) of.stages.push({ kind: 'PACK', minutes: five(settings.packMinutes), restMinutes: 0 });
  else of.done.set('PACK', packed.container.cameInAt);
  if (!packed?.conditionedAt) {
    of.stages.push({ kind: 'CONDITION', minutes: five(Math.max(5, column.conditioningMinutes)), restMinutes: rest });
    if (packed) of.keepsFrom = null;
    return;
  }
  of.done.set('CONDITION', packed.conditionedAt);
  of.keepsFrom = null;
  if (rest === 0) return;
  const from = minuteOf(packed.conditionedAt);
  of.running.push(running('REST', from, from + rest));
  of.floor = Math.max(of.floor, five(from + rest));
}

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
function withoutBegun(of: Building, facts: NeedFacts, now: Date): void {
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
      of.takes.push({ of: 'hood', from: Math.max(minuteOf(now), waiting.start), to: waiting.end, amount: amountOf(facts) });
    }
  }
  of.stages = stages;
}

/** What is left to do for a need. */
export function chainOf(
  facts: NeedFacts,
  prep: PrepFacts,
  resources: PrepResources,
  spans: readonly OvenSpan[],
): Chain {
  const { need, kept } = facts;
  const floor = five(minuteOf(prep.now) + 0.999);
  const of: Building = { stages: [], running: [], takes: [], done: new Map(), floor, keepsFrom: null };
  const isClean = washing(of, facts, prep, resources);
  drying(of, facts, resources, spans, isClean);
  equilibrating(of, facts, prep);
  packing(of, facts, prep);
  of.stages.push({ kind: 'HAND_OVER', minutes: handOverMinutes, restMinutes: 0 });
  withoutBegun(of, facts, prep.now);
  // Once in the oven, it is there.
  const inOven = spans.filter(({ needId, isBegun }) => isBegun && needId === need.id);
  const begun = Math.min(of.floor, ...inOven.map(({ start }) => start));
  return {
    prep: {
      id: need.id,
      at: minuteOf(need.at),
      weight: need.weight,
      floor: inOven.length > 0 ? begun : of.floor,
      keepsFrom: of.keepsFrom,
      stages: of.stages,
      takes: of.takes,
    },
    running: of.running,
    done: of.done,
    isWet: kept.some(({ container }) => container.wettedAt !== null && container.kind === 'PLATE_BOX'),
  };
}
