// What planning reads: needs with what is kept for them, how that stands, and what was done to it since.
import type { Event, Need, PrepStep, Prisma } from '../database/generated/sqlite/client.ts';
import { howClassIsDried, ownRecipes, type HowDried } from '../drying/service.ts';
import { prepared, type Prepared } from '../stock/service.ts';
import type { Transaction } from '../work.ts';
import { type ColumnSize, sizeOf } from './column.ts';
import { prepSettingsOf, type PrepSettings } from './settings.ts';

export type Reader = Pick<
  Transaction,
  | 'need'
  | 'hold'
  | 'container'
  | 'event'
  | 'prepStep'
  | 'recipe'
  | 'sorbent'
  | 'lot'
  | 'oven'
  | 'dryingRun'
  | 'room'
  | 'lotDecision'
>;

export interface LabFacts {
  id: string;
  timeZone: string;
  settings: unknown;
}

export const withStock = {
  include: { lot: { include: { sorbent: true } }, exposure: true },
} satisfies Prisma.ContainerDefaultArgs;

export type Stocked = Prisma.ContainerGetPayload<typeof withStock>;

/** Something that is kept for a need. */
export interface Kept {
  holdId: string;
  container: Stocked;
  /** Dry grams, or plates. */
  amount: number;
  prepared: Prepared | null;
  /** Dried, packed or conditioned since the need was made. */
  driedAt: Date | null;
  conditionedAt: Date | null;
}

export interface NeedFacts {
  need: Need;
  sorbentName: string;
  sorbentClass: string;
  /** Of a bed, kg/m³; null where nobody knows. */
  bulkDensityKgPerM3: number | null;
  how: HowDried;
  column: ColumnSize | null;
  kept: Kept[];
  steps: PrepStep[];
}

export interface PrepFacts {
  lab: LabFacts;
  settings: PrepSettings;
  now: Date;
  needs: NeedFacts[];
}

export const densityName = 'bulkDensityKgPerM3';

const grouped = <Row>(rows: readonly Row[], keyOf: (row: Row) => string | null): Map<string, Row[]> => {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row) ?? '';
    const there = groups.get(key);
    if (there) there.push(row);
    else groups.set(key, [row]);
  }
  return groups;
};

export function preparedOf({ prepared: stored }: { prepared: unknown }): Prepared | null {
  const read = prepared.safeParse(stored);
  return read.success ? read.data : null;
}

/** The needs given, with all that decides their plan. */
export async function factsOf(reader: Reader, lab: LabFacts, needs: readonly Need[], now: Date): Promise<PrepFacts> {
  const settings = prepSettingsOf(lab.settings);
  const ids = needs.map(({ id }) => id);
  const [holds, steps, sorbents, own] = await Promise.all([
    reader.hold.findMany({
      where: { needId: { in: ids }, releasedAt: null },
      include: { container: withStock },
      orderBy: { id: 'asc' },
    }),
    reader.prepStep.findMany({ where: { needId: { in: ids } }, orderBy: { startAt: 'asc' } }),
    reader.sorbent.findMany({
      where: { id: { in: [...new Set(needs.map(({ sorbentId }) => sorbentId))] } },
      include: { properties: { where: { name: densityName } } },
    }),
    ownRecipes(reader, lab.id),
  ]);
  const events = await reader.event.findMany({
    where: {
      containerId: { in: holds.map(({ containerId }) => containerId) },
      type: { in: ['DRIED', 'CONDITIONED'] },
      stands: true,
    },
    orderBy: [{ at: 'asc' }, { place: 'asc' }],
  });
  const eventsOf = grouped(events, ({ containerId }) => containerId);
  const holdsOf = grouped(holds, ({ needId }) => needId);
  const stepsOf = grouped(steps, ({ needId }) => needId);
  const sorbentOf = new Map(sorbents.map((sorbent) => [sorbent.id, sorbent]));
  const lastOf = (containerId: string, type: Event['type'], since: Date): Date | null =>
    (eventsOf.get(containerId) ?? []).filter((event) => event.type === type && event.at >= since).at(-1)?.at ?? null;
  return {
    lab,
    settings,
    now,
    needs: needs.map((need): NeedFacts => {
      const sorbent = sorbentOf.get(need.sorbentId);
      const sorbentClass = sorbent?.sorbentClass ?? '';
      const bulkDensityKgPerM3 = sorbent?.properties[0]?.value ?? null;
      const kept = (holdsOf.get(need.id) ?? []).map(({ id, container, dryGrams, plates }): Kept => ({
        holdId: id,
        container,
        amount: plates ?? dryGrams ?? 0,
        prepared: preparedOf(container),
        driedAt: lastOf(container.id, 'DRIED', need.madeAt),
        conditionedAt: lastOf(container.id, 'CONDITIONED', need.madeAt),
      }));
      const backing = need.kind === 'PLATES' ? (kept[0]?.container.backing ?? need.backing ?? 'GLASS') : null;
      return {
        need,
        sorbentName: sorbent?.name ?? '',
        sorbentClass,
        bulkDensityKgPerM3,
        how: howClassIsDried(own, sorbentClass, backing),
        column:
          need.kind === 'COLUMN' ? sizeOf(need, sorbentClass, bulkDensityKgPerM3, settings.conditioningVolumes) : null,
        kept,
        steps: stepsOf.get(need.id) ?? [],
      };
    }),
  };
}

/** What a need takes: plates, or dry grams. */
export const amountOf = ({ need, column }: Pick<NeedFacts, 'need' | 'column'>): number =>
  need.kind === 'PLATES' ? (need.plates ?? 0) : need.kind === 'COLUMN' ? (column?.dryGrams ?? 0) : (need.dryGrams ?? 0);
