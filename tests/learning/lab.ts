// A lab with a logger and drums whose water is truly known: solved by other means than the estimator's, from the same readings.
import { airOf, Truth } from '../science/calibration/truth.ts';
import { numbersOf } from '../science/support/lab.ts';
import { wellClosedPerLitre } from '../../api/science/closures.ts';
import type { Database } from '../../api/database/database.ts';
import { bringForward } from '../../api/exposure/service.ts';
import { learnAgain } from '../../api/learning/service.ts';
import { newWorld, type Seen } from '../support/world.ts';

export const day = 24 * 60;
/** How long ago everything came in, days. */
export const since = 60;
const mouthSPerM = 1 / 0.003;
const drum = { diameterM: 0.12, heightM: 0.25, dryKg: 1, start: 0.01 } as const;

/** A room with a day and weather in it, told every hour. */
function readingsFrom(nowMs: number) {
  const firstMs = nowMs - since * day * 60_000 - 3_600_000;
  return Array.from({ length: since * 24 + 2 }, (_, hour) => {
    const swing = Math.sin((2 * Math.PI * hour) / 24);
    const weather = Math.sin((2 * Math.PI * hour) / 137);
    return {
      atMs: firstMs + hour * 3_600_000,
      temperatureC: 22 + swing,
      humidityPercent: 48 + 4 * swing + 8 * weather,
    };
  });
}

export async function learningLab(database: Database) {
  const world = await newWorld(database);
  await world.furnished();
  await world.tell('addRoom', { name: 'store' }, '__typename');
  const readings = readingsFrom(world.now().getTime());
  await world.tell(
    'addReadings',
    {
      room: 'store',
      sensor: 'logger',
      readings: readings.map(({ atMs, ...values }) => ({ at: new Date(atMs), ...values })),
    },
    '__typename',
  );
  const air = airOf(
    readings.map(({ atMs, temperatureC, humidityPercent }) => ({
      atS: atMs / 1000,
      temperatureC,
      humidity: humidityPercent / 100,
    })),
  );
  const { lab } = world.app;
  return {
    ...world,
    /** Silica that stands well closed since it came in, with 1 % of water. */
    shut: (): Promise<Seen> =>
      world.drum(
        1000 * drum.dryKg,
        { basis: 'DRY', room: 'store', closure: 'WELL_CLOSED', tareGrams: 200 },
        { receivedAt: world.ago(since * day), certificateWaterPercent: 100 * drum.start },
      ),
    /** True water of such a drum so many days after it came in, when its closure lets in `leak` times what its class does. */
    truth(days: number, leak: number): number {
      const sorbent = numbersOf('silica');
      const areaM2 = (Math.PI * drum.diameterM ** 2) / 4;
      const depthM = drum.dryKg / sorbent.bulkDensityKgPerM3 / areaM2;
      const conductance = 1000 * areaM2 * drum.heightM * wellClosedPerLitre;
      const resistance = (diffusivity: number): number =>
        (mouthSPerM + (drum.heightM - depthM) / diffusivity + areaM2 / conductance) / leak;
      const bed = new Truth({ sorbent, depthM, capacity: 1, bedFactor: 1, start: drum.start, desorption: 1 }, air);
      const fromS = world.ago(since * day).getTime() / 1000;
      bed.carry(fromS, fromS + days * 86_400, false, resistance);
      return bed.mean();
    },
    /** So many days after everything came in. */
    on: (days: number): Date => world.ago((since - days) * day),
    /** Learns from all that was weighed, and brings every estimate forward; false where nothing had changed. */
    async learn(): Promise<boolean> {
      const isNew = await learnAgain({ database, lab, now: world.now });
      const all = await database.read.container.findMany({ where: { labId: lab.id }, select: { id: true } });
      await bringForward(
        database,
        lab,
        all.map(({ id }) => id),
        world.now().getTime(),
      );
      return isNew;
    },
    async water(label: string): Promise<{ meanWaterFraction: number; low: number; high: number }> {
      const { container } = await world.ask<{
        container: { exposure: { meanWaterFraction: number; low: number; high: number } };
      }>('query ($label: String!) { container(label: $label) { exposure { meanWaterFraction low high } } }', { label });
      return container.exposure;
    },
    async learned() {
      const asked = '{ learned { name sentence value sd weighingCount } }';
      type Fact = { name: string; sentence: string; value: number; sd: number; weighingCount: number };
      return (await world.ask<{ learned: Fact[] }>(asked)).learned;
    },
    async weighings(label: string) {
      const asked =
        'query ($label: String!) { weighings(label: $label) { event { id } counts sigmas of found expectedNow why isRight } }';
      const { weighings } = await world.ask<{
        weighings: {
          event: { id: string };
          counts: string;
          sigmas: number | null;
          of: string | null;
          found: number | null;
          expectedNow: number | null;
          why: string | null;
          isRight: boolean | null;
        }[];
      }>(asked, { label });
      return weighings;
    },
  };
}
