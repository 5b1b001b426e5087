// One run with its loads, found by id; and what its loads are made of.
import type { DryingLoad } from '../database/generated/sqlite/client.ts';
import { unknown } from '../errors.ts';
import { localId } from '../stock/service.ts';
import type { Transaction, Work } from '../work.ts';
import type { InOven } from './tray.ts';

const whole = {
  oven: true,
  loads: {
    include: {
      request: {
        include: { container: { include: { exposure: true, lot: { include: { sorbent: true } } } } },
      },
    },
    orderBy: { id: 'asc' },
  },
} as const;

const found = (tx: Pick<Transaction, 'dryingRun'>, id: string, labId: string) =>
  tx.dryingRun.findFirst({ where: { id, labId }, include: whole });

export type WholeRun = NonNullable<Awaited<ReturnType<typeof found>>>;
export type WholeLoad = WholeRun['loads'][number];

export async function runOf(
  { tx, labId }: Pick<Work, 'tx' | 'labId'>,
  said: string,
  path = 'input.run',
): Promise<WholeRun> {
  const run = await found(tx, localId('DryingRun', said, path), labId);
  if (!run) throw unknown(path, said, 'the id of a drying run of this lab; plan again if it was laid out anew');
  return run;
}

/** The load as the tray model takes it. */
export const inOven = (
  run: Pick<WholeRun, 'oven' | 'temperatureC' | 'isVacuum' | 'loads'>,
  load: WholeLoad,
  roomVapourPa: number | null,
): InOven => {
  const { container } = load.request;
  return {
    sorbentClass: container.lot.sorbent.sorbentClass,
    isPlates: container.kind === 'PLATE_BOX',
    depthMm: load.depthMm,
    layerMm: container.layerThicknessMm,
    waterFraction: container.exposure?.meanWaterFraction ?? null,
    temperatureC: run.temperatureC,
    oven: run.oven,
    isVacuum: run.isVacuum,
    trayAreaM2: run.loads.reduce((sum, { areaCm2 }) => sum + areaCm2, 0) / 1e4,
    roomVapourPa,
  };
};

const minuteMs = 60_000;

/** Minutes that a run was in the oven by an instant, less those with the door open. */
export function minutesIn(run: Pick<WholeRun, 'startedAt' | 'doorAt' | 'oven'>, until: Date): number {
  if (!run.startedAt) return 0;
  const doors = doorsOf(run.doorAt).filter((at) => at <= until).length;
  const minutes = (until.getTime() - run.startedAt.getTime()) / minuteMs - doors * run.oven.doorMinutes;
  return Math.max(0, minutes);
}

/** Instants at which the door was opened. */
export const doorsOf = (doorAt: unknown): Date[] =>
  Array.isArray(doorAt) ? doorAt.filter((each) => typeof each === 'string').map((each) => new Date(each)) : [];

/** What a load is called: the container, and which part of its request. */
export const loadName = (
  load: Pick<DryingLoad, 'part' | 'parts'> & { request: { container: { label: string } } },
): string =>
  load.parts > 1 ? `${load.request.container.label} (${load.part} of ${load.parts})` : load.request.container.label;
