// What a plan is made from, read in one go: ovens, requests that wait, and runs that are planned or in the oven.
import type { Container, Oven, OvenCare, Prisma } from '../database/generated/sqlite/client.ts';
import { howClassIsDried, ownRecipes, usualTargetOf, type HowDried } from '../drying/service.ts';
import type { Transaction } from '../work.ts';
import { familyOf, type Family } from './rules.ts';

export type Reader = Pick<
  Transaction,
  'oven' | 'ovenCare' | 'dryingRequest' | 'dryingRun' | 'dryingLoad' | 'recipe' | 'lab' | 'container'
>;

export type OvenWithCare = Oven & { care: OvenCare[] };

/** What is dried, with all that decides how. */
export interface Material {
  container: Container;
  sorbentName: string;
  sorbentClass: string;
  family: Family;
  bulkDensityKgPerM3: number | null;
  /** Mean water by the estimate, kg/kg dry; null where nobody knows. */
  waterFraction: number | null;
  /** Water it is to come to, kg/kg dry. */
  target: number;
  how: HowDried;
}

const withMaterial = {
  include: {
    exposure: { select: { meanWaterFraction: true } },
    lot: { include: { sorbent: { include: { properties: { where: { name: 'bulkDensityKgPerM3' } } } } } },
  },
} satisfies Prisma.ContainerDefaultArgs;

type ContainerRow = Prisma.ContainerGetPayload<typeof withMaterial>;

const withLoads = {
  include: {
    loads: { include: { request: { include: { container: withMaterial } } }, orderBy: { id: 'asc' } },
    oven: true,
  },
} satisfies Prisma.DryingRunDefaultArgs;

export type RunRow = Prisma.DryingRunGetPayload<typeof withLoads>;
export type LoadRow = RunRow['loads'][number];

const withRequest = {
  include: { container: withMaterial, loads: { include: { run: { select: { state: true, isPinned: true } } } } },
  orderBy: [{ position: 'asc' }, { id: 'asc' }],
} satisfies Prisma.DryingRequestFindManyArgs;

export type RequestRow = Prisma.DryingRequestGetPayload<typeof withRequest>;

export interface Facts {
  labId: string;
  timeZone: string;
  settings: unknown;
  now: Date;
  ovens: OvenWithCare[];
  /** Those that wait, in their order. */
  requests: RequestRow[];
  /** Planned or in the oven. */
  runs: RunRow[];
  /** The last runs that left each oven: what it may still stand at. */
  lastOut: { ovenId: string; outAt: Date | null; temperatureC: number }[];
  /** Vapour pressure of a room's air, Pa; null or missing where nobody knows. */
  vapourPa: ReadonlyMap<string, number | null>;
  materialOf: (container: ContainerRow) => Material;
}

const dayMs = 86_400_000;

export async function factsOf(
  reader: Reader,
  lab: { id: string; timeZone: string; settings: unknown },
  now: Date,
): Promise<Facts> {
  const labId = lab.id;
  const dayBefore = new Date(now.getTime() - dayMs);
  const [ovens, requests, runs, out, own] = await Promise.all([
    reader.oven.findMany({
      where: { labId, removedAt: null },
      include: { care: { where: { takenBackAt: null }, orderBy: { at: 'asc' } } },
      orderBy: { name: 'asc' },
    }),
    reader.dryingRequest.findMany({ where: { labId, state: 'WAITING' }, ...withRequest }),
    reader.dryingRun.findMany({
      where: { labId, state: { in: ['PLANNED', 'IN_OVEN'] } },
      ...withLoads,
      orderBy: [{ plannedStart: 'asc' }, { id: 'asc' }],
    }),
    reader.dryingRun.findMany({
      where: { labId, OR: [{ outAt: { gte: dayBefore } }, { endedAt: { gte: dayBefore } }] },
      select: { ovenId: true, outAt: true, endedAt: true, temperatureC: true },
      orderBy: { startedAt: 'asc' },
    }),
    ownRecipes(reader, labId),
  ]);
  const { id: _, ...rest } = lab;
  const materialOf = (container: ContainerRow): Material => materialFrom(container, own);
  return {
    labId,
    timeZone: rest.timeZone,
    settings: rest.settings,
    now,
    ovens,
    requests,
    runs,
    lastOut: out.map(({ ovenId, outAt, endedAt, temperatureC }) => ({ ovenId, outAt: outAt ?? endedAt, temperatureC })),
    vapourPa: new Map(),
    materialOf,
  };
}

/** Of a bed, kg/m³; null where nobody knows. */
const densityOf = ({ properties }: { properties: { value: number | null }[] }): number | null =>
  properties[0]?.value ?? null;

function materialFrom(container: ContainerRow, own: Awaited<ReturnType<typeof ownRecipes>>): Material {
  const { sorbent } = container.lot;
  return {
    container,
    sorbentName: sorbent.name,
    sorbentClass: sorbent.sorbentClass,
    family: familyOf({ kind: container.kind, ...sorbent }),
    bulkDensityKgPerM3: densityOf(sorbent),
    waterFraction: container.exposure?.meanWaterFraction ?? null,
    target: usualTargetOf(sorbent),
    how: howClassIsDried(own, sorbent.sorbentClass, container.backing),
  };
}
