// How plates were prepared: washed, aired, activated or equilibrated. Folded from the timeline; instants are text, as stored.
import { z } from 'zod';
import type { PlateRegime } from '../database/generated/sqlite/client.ts';
import type { DetailOf } from './details.ts';
import type { Entry, Stand } from './stand.ts';

export const directions = ['ALONG_HEIGHT', 'ALONG_WIDTH'] as const;
export const frontEdges = ['CUT', 'MARKED', 'LEFT'] as const;

const step = { at: z.string(), eventId: z.string() };
const said = z.string().nullable();
const number = z.number().nullable();

export const prepared = z.object({
  preWash: z
    .object({
      ...step,
      solvent: said,
      direction: z.enum(directions).nullable(),
      fullLength: z.boolean().nullable(),
      frontEdge: z.enum(frontEdges).nullable(),
      /** It was washed with the mobile phase of an extraction. */
      isMobilePhase: z.boolean(),
      tankLoads: number,
      mlPerLoad: number,
    })
    .nullable(),
  solventGone: z.object({ ...step, seenBy: said }).nullable(),
  activation: z.object({ ...step, temperatureC: number, minutes: number, vacuum: z.boolean(), oven: said }).nullable(),
  equilibration: z
    .object({ ...step, humidityPercent: z.number(), temperatureC: z.number(), over: said, hours: number })
    .nullable(),
});
export type Prepared = z.infer<typeof prepared>;

const nothing: Prepared = { preWash: null, solventGone: null, activation: null, equilibration: null };

const stepOf = (entry: Entry) => ({ at: entry.at.toISOString(), eventId: entry.id });

/** Washed: whatever was done before counts no more. */
export const washed = (entry: Entry, detail: DetailOf<'PRE_WASHED'>): Prepared => ({
  ...nothing,
  preWash: {
    ...stepOf(entry),
    solvent: detail.solvent,
    direction: detail.direction ?? null,
    fullLength: detail.fullLength ?? null,
    frontEdge: detail.frontEdge ?? null,
    isMobilePhase: detail.isMobilePhase ?? false,
    tankLoads: detail.tankLoads ?? null,
    mlPerLoad: detail.mlPerLoad ?? null,
  },
});

/** Wetted by something else than a pre-wash: neither clean nor dry any more. */
export const spoiled = (): Prepared => ({ ...nothing });

export const aired = (before: Prepared | null, entry: Entry, { seenBy }: DetailOf<'SOLVENT_GONE'>): Prepared => ({
  ...(before ?? nothing),
  solventGone: { ...stepOf(entry), seenBy: seenBy ?? null },
});

export const activated = (before: Prepared | null, entry: Entry, detail: DetailOf<'DRIED'>): Prepared => {
  const { temperatureC, minutes, vacuum, oven } = detail;
  const activation = { ...stepOf(entry), temperatureC, minutes, vacuum, oven: oven ?? null };
  return { ...(before ?? nothing), activation, equilibration: null };
};

export const equilibrated = (before: Prepared | null, entry: Entry, detail: DetailOf<'EQUILIBRATED'>): Prepared => {
  const { humidityPercent, temperatureC, over, hours } = detail;
  const equilibration = { ...stepOf(entry), humidityPercent, temperatureC, over: over ?? null, hours: hours ?? null };
  return { ...(before ?? nothing), equilibration };
};

/** When the solvent may be called gone, ms: so many hours after they were set in the hood. */
export const goneFromMs = ({ wettedAt, hoodAt }: Pick<Stand, 'wettedAt' | 'hoodAt'>, leastHours: number): number =>
  (hoodAt ?? wettedAt ?? new Date(0)).getTime() + leastHours * 3_600_000;

/** What the columns say of it now. */
export function regimeColumns({ wettedAt, hoodAt, prepared: of }: Pick<Stand, 'wettedAt' | 'hoodAt' | 'prepared'>) {
  const equilibration = wettedAt ? null : (of?.equilibration ?? null);
  const activation = wettedAt ? null : (of?.activation ?? null);
  const last = equilibration ?? activation;
  const regime: PlateRegime | null = equilibration ? 'EQUILIBRATED' : activation ? 'DRY_UNTIL_SPOTTED' : null;
  return {
    hoodAt: wettedAt ? hoodAt : null,
    regime,
    preparedAt: last ? new Date(last.at) : null,
    regimeHumidityPercent: equilibration?.humidityPercent ?? null,
    regimeTemperatureC: equilibration?.temperatureC ?? null,
  };
}
