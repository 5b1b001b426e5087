// One container's history, ready for the estimator: its bed, its start, what happened since, and where to go on from.
import type { FleetContainer, FleetEvent } from '../database/fleet.ts';
import type { Action, BedSpec, Checkpoint, FoldInput, Start, Target } from '../science/history.ts';
import { factorOf } from '../science/uncertainty.ts';
import { roomAt } from '../science/checkpoint.ts';
import type { RoomAir } from '../science/climate.ts';
import { actionsOf, toldOf, type Telling, type Told } from './actions.ts';
import { usualClosureOf } from './closure.ts';
import { geometryOf } from './geometry.ts';
import type { Grounds, LotGround } from './ground.ts';
import { habitTurns } from './hours.ts';
import type { Numbers } from './numbers.ts';
import type { Parcel } from './parcels.ts';
import { ovenLoadOf, type OvenLoad } from './weighed.ts';
import { isBeginning, startOf } from './start.ts';
import { equilibratedTarget } from './target.ts';

/** The bed of a container, or what is missing for one. */
export function specOf(container: FleetContainer, lot: LotGround, grounds: Grounds): BedSpec | string {
  if (typeof lot.numbers === 'string') return lot.numbers;
  const geometry = geometryOf(container);
  if (typeof geometry === 'string') return geometry;
  const { scoopKg, topM, filmMPerS, pressurePa } = grounds.settings;
  return {
    key: container.id,
    sorbent: container.kind === 'PLATE_BOX' ? lot.numbers.layer : lot.numbers.bed,
    geometry,
    scoopKg,
    topM,
    usualClosure: usualClosureOf(container.usualClosure),
    filmMPerS,
    pressurePa,
  };
}

/** What of a container goes into an oven: its layer on plates, or what lies loose in a tray. */
export const loadOf = ({ sorbent, geometry }: BedSpec, { drying }: Numbers): OvenLoad =>
  geometry.kind === 'plate' ? ovenLoadOf(drying, sorbent.bulkDensityKgPerM3, geometry.layerM) : ovenLoadOf(drying);

/** Dry grams in the container just before each of its events, by the book. */
function bookBefore(events: readonly Told[]): (event: Told) => number {
  const before = new Map<Told, number>();
  let dryGrams = 0;
  for (const event of events) {
    before.set(event, dryGrams);
    if (event.type === 'COUNTED') dryGrams = event.detail.dryGrams;
    else if (event.role === 'filled' || event.type === 'CAME_IN') dryGrams += event.dryGrams ?? 0;
    else dryGrams = Math.max(0, dryGrams - (event.dryGrams ?? 0));
  }
  return (event) => before.get(event) ?? 0;
}

/** The stretches over which a habit held, for the days on which the clocks change. */
function habitsHeld(events: readonly Told[], untilS: number) {
  const held: { fromS: number; untilS: number; habit: { timesADay: number; minutes: number } }[] = [];
  for (const event of events) {
    if (event.type !== 'HABIT_SET' || event.detail.habit === undefined) continue;
    const last = held.at(-1);
    if (last) last.untilS = Math.min(last.untilS, event.at / 1000);
    if (event.detail.habit) held.push({ fromS: event.at / 1000, untilS, habit: event.detail.habit });
  }
  return held;
}

/** Must a timeline be read from its beginning, checkpoint or not? Only where an event counts by what was before it. */
export const needsWhole = (events: readonly FleetEvent[]): boolean =>
  events.some(({ type, role }) => role === 'own' && (type === 'WEIGHED' || type === 'HABIT_SET'));

export interface Known {
  readonly container: FleetContainer;
  readonly lot: LotGround;
  readonly spec: BedSpec;
  readonly events: readonly FleetEvent[];
  readonly parcels: ReadonlyMap<string, Parcel>;
  readonly checkpoint: Checkpoint | null;
}

/** Stands where a checkpoint tells everything that a start would. */
const goingOn = (container: FleetContainer, checkpoint: Checkpoint, assumedWaterFraction: number): Start => ({
  atS: checkpoint.atS,
  room: container.roomId,
  lid: 'open',
  habit: null,
  scooping: 'top',
  dryKg: 0,
  plates: 1,
  water: { kind: 'unknown', assumedWaterFraction },
});

/** Start and actions of a history; null when nothing began it. */
export function historyOf(
  known: Known,
  grounds: Grounds,
  asOfS: number,
): { start: Start; actions: Action[]; rooms: string[] } | null {
  const { container, lot, spec, parcels, checkpoint } = known;
  if (typeof lot.numbers === 'string') return null;
  const events = known.events.map(toldOf);
  const isPlates = spec.geometry.kind === 'plate';
  const perPlateKg =
    spec.geometry.kind === 'plate'
      ? spec.geometry.plateAreaM2 * spec.geometry.layerM * spec.sorbent.bulkDensityKgPerM3
      : 0;
  const telling: Telling = {
    isotherm: lot.numbers.isotherm,
    hours: grounds.settings.hours,
    parcels,
    isPlates,
    oven: loadOf(spec, lot.numbers),
    dryGramsPerPlate: 1000 * perPlateKg,
    dryGramsBefore: bookBefore(events),
    assumedWaterFraction: lot.assumedWaterFraction,
  };
  const made = events.find(isBeginning);
  const begun = made ? startOf(made, parcels.get(made.eventId), lot.assumedWaterFraction) : null;
  const start = begun ?? (checkpoint && goingOn(container, checkpoint, lot.assumedWaterFraction));
  if (!start) return null;
  const turns = habitTurns(habitsHeld(events, asOfS), grounds.settings.hours);
  const actions = [...events.flatMap((event) => actionsOf(event, telling)), ...turns];
  if (turns.length > 0) actions.sort((one, other) => one.atS - other.atS);
  const moves = actions.flatMap((action) => (action.kind === 'moved' ? [action.room] : []));
  const first = checkpoint ? roomAt(checkpoint) : start.room;
  return { start, actions, rooms: [...new Set([first, container.roomId, ...moves])] };
}

/** The band of a container: that of its lot, or of the air that its plates were equilibrated in. */
function targetIn(known: Pick<Known, 'container' | 'lot'>, grounds: Grounds): Target {
  const { container, lot } = known;
  const { regimeHumidityPercent: percent, regimeTemperatureC } = container;
  if (percent === null || regimeTemperatureC === null || typeof lot.numbers === 'string') return lot.target;
  const air = { humidity: percent / 100, temperatureC: regimeTemperatureC, band: grounds.settings.equilibratedBand };
  return equilibratedTarget(air, lot.numbers.isotherm, factorOf(grounds.factorsOf(container, lot), 'capacity'));
}

export const foldInputOf = (
  known: Known,
  history: { start: Start; actions: Action[] },
  airs: ReadonlyMap<string, RoomAir>,
  grounds: Grounds,
  asOfS: number,
): FoldInput => ({
  spec: known.spec,
  start: history.start,
  actions: history.actions,
  airs,
  checkpoint: known.checkpoint,
  asOfS,
  target: targetIn(known, grounds),
  thresholds: grounds.settings.thresholds,
  factors: grounds.factorsOf(known.container, known.lot),
});
