// Stores a batch of estimates in one transaction, and leaves out those whose inputs changed while they were made.
import * as stored from '../database/exposures.ts';
import type { Engine, Transaction } from '../database/client.ts';
import type { Estimates } from './estimate.ts';

export interface Stored {
  /** Containers that are stale now: their inputs changed meanwhile, or what they were handed did, or they wait for it. */
  readonly stale: string[];
  /** Something was stored that was not there before. */
  readonly moved: boolean;
}

export async function storeEstimates(
  tx: Transaction,
  engine: Engine,
  { estimates, waits }: Estimates,
): Promise<Stored> {
  const versions = await stored.versionsOf(
    tx,
    engine,
    estimates.map(({ containerId }) => containerId),
  );
  const isLate = ({ containerId, version }: Estimates['estimates'][number]) =>
    (versions.get(containerId) ?? 0) !== version;
  const late = estimates.filter(isLate);
  const good = late.length === 0 ? estimates : estimates.filter((one) => !isLate(one));

  const dropped = good.flatMap((one) => (one.dropFrom === null ? [] : [[one.containerId, one.dropFrom] as const]));
  const thinned = good.flatMap((one) => one.thinned.map((at) => [one.containerId, at] as const));
  await stored.dropCheckpointsFrom(tx, engine, dropped);
  await stored.dropCheckpoints(tx, engine, thinned);
  await stored.storeCheckpoints(
    tx,
    engine,
    good.flatMap(({ checkpoints }) => checkpoints),
  );
  await stored.dropParcels(
    tx,
    engine,
    good.flatMap(({ goneParcels }) => goneParcels),
  );
  await stored.storeParcels(
    tx,
    engine,
    good.flatMap(({ parcels }) => parcels),
  );
  await stored.storeExposures(
    tx,
    engine,
    good.flatMap(({ exposure }) => exposure ?? []),
  );

  const partly = good.flatMap((one) => (one.staleFrom === null ? [] : [[one.containerId, one.staleFrom] as const]));
  const receivers = good.flatMap((one) => one.receivers);
  const asked = waits.flatMap(({ event, asks }) => (asks ? [[event.containerId, event.at] as const] : []));
  await stored.setStaleFrom(tx, engine, partly);
  await stored.markStaleFrom(tx, engine, [...receivers, ...asked]);

  const stale = [
    ...receivers.map(([id]) => id),
    ...waits.flatMap(({ id, event }) => [id, event.containerId]),
    ...late.map(({ containerId }) => containerId),
  ];
  const moved = good.some(({ exposure }) => exposure !== null) || receivers.length > 0 || asked.length > 0;
  return { stale: [...new Set(stale)], moved };
}
