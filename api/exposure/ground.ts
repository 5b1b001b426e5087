// What containers' estimates stand on, read a chunk at a time: rows become the estimator's words. Tables of a lot and a room's
// air are read once and shared.
import * as fleet from '../database/fleet.ts';
import type { FleetContainer, FleetLot } from '../database/fleet.ts';
import type { Reader } from '../database/reader.ts';
import { roomAirOf } from '../climate/service.ts';
import type { RoomAir } from '../science/climate.ts';
import { foldFactors } from '../science/calibration/factors.ts';
import { biasedAirs, told } from '../science/calibration/moved.ts';
import type { Factor, FoldInput } from '../science/history.ts';
import { sorbentClass } from '../science/properties.ts';
import { type Learned, learnedOf } from './learned.ts';
import { isothermNames, type Numbers, numbersOf } from './numbers.ts';
import { estimateSettingsOf, type EstimateSettings } from './settings.ts';
import { type BandOrigin, targetOf } from './target.ts';
import type { Target } from '../science/history.ts';

/** The lab, as far as estimates go; plain data, so that it can be sent to a worker. */
export interface LabFacts {
  readonly id: string;
  readonly timeZone: string;
  readonly settings: unknown;
}

export interface LotGround {
  readonly lot: FleetLot;
  /** Or what is missing for an estimate. */
  readonly numbers: Numbers | string;
  readonly target: Target & { from: BandOrigin };
  /** Water taken for granted where nothing is known: the certificate's maximum, else 3 %. */
  readonly assumedWaterFraction: number;
  /** What its capacity is shared with: a class, or a sorbent with numbers of its own. */
  readonly pool: string;
}

const dayMs = 86_400_000;
const assumedWaterFraction = 0.03;

export interface Grounds {
  readonly lab: LabFacts;
  readonly settings: EstimateSettings;
  /** Of these lots; read when first asked for. */
  lots(ids: Iterable<string>): Promise<ReadonlyMap<string, LotGround>>;
  /** Of these rooms, at least from one day to another. */
  airs(roomIds: Iterable<string>, fromMs: number, untilMs: number): Promise<ReadonlyMap<string, RoomAir>>;
  factorsOf(container: Pick<FleetContainer, 'id'>, lot: LotGround): readonly Factor[];
  /** What weighings taught; null where nothing was learned yet. */
  readonly learned: Learned | null;
  /** A history under what was learned. */
  underLearned(input: FoldInput, lot: LotGround): FoldInput;
}

/** Numbers of a sorbent's own by which its capacity has nothing to do with its class any more. */
const ownNumbers: ReadonlySet<string> = new Set([...isothermNames, 'capacityDoubt', 'capacityDoubtWet']);

/** Grounds of one round: what is read here is taken not to change meanwhile. Learning itself begins from what nothing taught. */
export async function groundsOf(reader: Reader, lab: LabFacts, { untaught = false } = {}): Promise<Grounds> {
  const settings = estimateSettingsOf(lab.settings, lab.timeZone);
  const learned = untaught ? null : await learnedOf(reader, lab.id);
  const airUnder = biasedAirs();
  const lots = new Map<string, LotGround>();
  const airs = new Map<string, { fromDay: number; untilDay: number; air: RoomAir }>();

  async function readLots(ids: string[]): Promise<void> {
    const rows = await fleet.fleetLots(reader, ids);
    const properties = await fleet.fleetProperties(reader, [...new Set(rows.map(({ sorbentId }) => sorbentId))]);
    for (const lot of rows) {
      const own = properties.filter(({ sorbentId }) => sorbentId === lot.sorbentId);
      const numbers = numbersOf(lot, own);
      const isOwn = own.some(({ name, value }) => value !== null && ownNumbers.has(name));
      lots.set(lot.id, {
        lot,
        numbers,
        target: targetOf(lot),
        assumedWaterFraction: lot.certificateMaxWaterFraction ?? assumedWaterFraction,
        pool: isOwn ? lot.sorbentId : lot.sorbentClass,
      });
    }
  }

  return {
    lab,
    settings,
    async lots(ids) {
      const missing = [...new Set(ids)].filter((id) => !lots.has(id));
      if (missing.length > 0) await readLots(missing);
      return lots;
    },
    async airs(roomIds, fromMs, untilMs) {
      const fromDay = Math.floor(fromMs / dayMs);
      const untilDay = Math.floor(untilMs / dayMs) + 1;
      const found = new Map<string, RoomAir>();
      for (const id of new Set(roomIds)) {
        const known = airs.get(id);
        if (known && known.fromDay <= fromDay && known.untilDay >= untilDay) {
          found.set(id, known.air);
          continue;
        }
        const from = Math.min(fromDay, known?.fromDay ?? fromDay);
        const until = Math.max(untilDay, known?.untilDay ?? untilDay);
        const air = await roomAirOf(reader, id, from, until);
        airs.set(id, { fromDay: from, untilDay: until, air });
        found.set(id, air);
      }
      return found;
    },
    factorsOf: ({ id }, { pool, lot }) => (learned ? foldFactors(learned.values, pool, lot.id, id) : []),
    learned,
    underLearned(input, { pool, lot }) {
      if (!learned) return input;
      const stock = { pool, lot: lot.id };
      return { ...told(input, stock, learned.values, airUnder), taught: { ...stock, held: learned.held } };
    },
  };
}

/** The class's words on how sure its isotherm is; for a class of the lab's own, none. */
export const classConfidence = (lot: FleetLot): string => sorbentClass(lot.sorbentClass)?.isothermConfidence ?? 'guess';
