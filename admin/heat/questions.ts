// What the pages of ovens ask: ovens with their care, runs of a stretch of time, the plan that counts, one run in full.
import { question } from '../ask.ts';
import type { Kind } from '../say/words.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';
import type { CareKind, Family, OvenKind, RunState } from './words.ts';

const careFields = {
  id: text,
  kind: word<CareKind>(),
  at: instant,
  until: maybe(instant),
  note: maybe(text),
  sentence: text,
};
export type Care = Answer<typeof careFields>;

const ovenFields = {
  id: text,
  name: text,
  kind: word<OvenKind>(),
  room: { name: text },
  shelves: number,
  shelfAreaCm2: number,
  areaCm2: number,
  shelfHeightMm: number,
  hasFan: flag,
  lowestC: number,
  highestC: number,
  heatMinutesPerC: number,
  coolMinutesPerC: number,
  doorMinutes: number,
  pressureMbar: maybe(number),
  pumpM3PerH: maybe(number),
  isUnattended: flag,
  hours: many({ days: many(number), from: text, to: text }),
  hasOwnHours: flag,
  care: many(careFields),
  outOfOrder: maybe({ id: text }),
};
export type Oven = Answer<typeof ovenFields>;

export const ovensQuestion = question<Record<string, never>>('Ovens')({
  ovens: many(ovenFields),
  lab: { hasOwnOvensApart: flag, ovensApart: many({ families: many(word<Family>()), sentence: text }) },
  salts: given('temperatureC: 25', many({ name: text })),
  rooms: given('first: 200', {
    nodes: many({ name: text, sensors: many({ name: text, checks: many(careFields) }) }),
  }),
});
export type Ovens = Answer<typeof ovensQuestion.shape>;

const loadFields = {
  id: text,
  part: number,
  parts: number,
  dryGrams: maybe(number),
  plates: maybe(number),
  trays: number,
  depthMm: maybe(number),
  waterFraction: maybe(number),
  isWeighed: flag,
  request: { id: text, wantedBy: maybe(instant), priority: number },
  container: {
    label: text,
    kind: word<Kind>(),
    dryGrams: number,
    sorbent: { name: text, sorbentClass: text },
    solventWetAt: maybe(instant),
    touchedSolventAt: maybe(instant),
    '... on PlateBox': { backing: word<'GLASS' | 'ALUMINIUM' | 'PLASTIC'>(), plates: number },
  },
};
export type Load = Answer<typeof loadFields>;

export const runFields = {
  id: text,
  oven: { id: text, name: text, kind: word<OvenKind>() },
  state: word<RunState>(),
  isPinned: flag,
  start: instant,
  end: instant,
  setAt: instant,
  plannedStart: instant,
  plannedEnd: instant,
  temperatureC: number,
  setupMinutes: number,
  leastMinutes: number,
  mostMinutes: number,
  isVacuum: flag,
  reason: text,
  startedAt: maybe(instant),
  doorAt: many(instant),
  outAt: maybe(instant),
  coolMinutes: number,
  cooledAt: maybe(instant),
  endedAt: maybe(instant),
  why: maybe(text),
  minutesLate: number,
  loads: many(loadFields),
};
export type Run = Answer<typeof runFields>;

const planFields = {
  id: text,
  madeAt: instant,
  because: text,
  words: text,
  isProven: flag,
  changes: many({ label: text, from: maybe({ oven: text, start: instant }), sentence: text }),
  leftOut: many({ label: text, why: text }),
  due: many(text),
};
export type Plan = Answer<typeof planFields>;

const planningFields = { startedAt: instant, share: number, jobs: number };
export type Planning = Answer<typeof planningFields>;

/** Runs that lie in a stretch of time. */
export const runsQuestion = question<{ from: string; to: string }>(
  'Runs',
  '$from: DateTime, $to: DateTime',
)({
  dryingRuns: given('from: $from, to: $to', many(runFields)),
});

/** Runs that are under way or waited for, whenever that is. */
export const underWayQuestion = question<{ from: string; to: string }>(
  'UnderWay',
  '$from: DateTime, $to: DateTime',
)({
  dryingRuns: given('from: $from, to: $to, state: [PLANNED, IN_OVEN, COOLING, COOLED]', many(runFields)),
  ovenPlan: maybe(planFields),
  ovenPlanning: maybe(planningFields),
  ovens: many({ id: text }),
});

export const planningQuestion = question<Record<string, never>>('Planning')({
  ovenPlanning: maybe(planningFields),
});

/** What the model expects of each load; dear to work out, so only of the run that is looked at. */
export const expectedQuestion = question<{ id: string }>(
  'Expected',
  '$id: ID!',
)({
  node: maybe(
    given('id: $id', { '... on DryingRun': { loads: many({ id: text, forecastWaterFraction: maybe(number) }) } }),
  ),
});
