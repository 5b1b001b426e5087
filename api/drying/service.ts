// The list of what to dry: asked for, put in order, withdrawn, and answered when a drying is recorded.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { DryingRequest } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { containerOf, localId, said } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import './answered.ts';
import { requestEnded } from './ended.ts';
import { howDried } from './how-dried.ts';
import { checkRequest, positionBefore } from './rules.ts';

export const requestSaid = z.object({
  label: said.label,
  dryGrams: said.grams,
  plates: said.plates,
  why: z.string('why').trim().min(1, 'why').max(500, 'at most 500 signs'),
  wantedBy: z.date('an instant').nullish(),
  temperatureC: said.celsius.nullish(),
  minutes: said.minutes.nullish(),
  priority: z.literal([1, 2, 4, 8], '1, 2, 4 or 8').nullish(),
  depthMm: said.mm.min(1, '1 mm or more').max(100, 'at most 100 mm').nullish(),
  readyAt: z.date('an instant').nullish(),
  clientKey: said.clientKey,
});

/** Each may be left out (stays) or null (taken away). */
export const changeSaid = requestSaid
  .pick({
    wantedBy: true,
    temperatureC: true,
    minutes: true,
    priority: true,
    depthMm: true,
    readyAt: true,
    clientKey: true,
  })
  .extend({ id: z.string('the id of a request') });

export const withdrawSaid = z.object({ id: z.string('the id of a request'), clientKey: said.clientKey });

export const moveSaid = z.object({
  id: z.string('the id of a request'),
  before: z.string('the id of a request').nullish(),
  clientKey: said.clientKey,
});

/** The recipe of a container and what its oven may not be set above: for every room that heats something. */
export { howClassIsDried, howDried, ownRecipes, type HowDried } from './how-dried.ts';
export { planApart, usualSeconds } from './planning/plan-apart.ts';
export { onRequestEnded } from './ended.ts';

const inOrder = [{ position: 'asc' as const }, { id: 'asc' as const }];

const waitingOf = ({ tx, labId }: Work): Promise<DryingRequest[]> =>
  tx.dryingRequest.findMany({ where: { labId, state: 'WAITING' }, orderBy: inOrder });

async function requestOf(work: Work, id: string, path: string): Promise<DryingRequest> {
  const key = localId('DryingRequest', id, path);
  const request = await work.tx.dryingRequest.findFirst({ where: { id: key, labId: work.labId } });
  if (!request) throw unknown(path, id, 'the id of a drying request of this lab');
  return request;
}

/** A request that still waits; refuses one that was dried or withdrawn. */
export async function waitingRequest(work: Work, id: string, path: string): Promise<DryingRequest> {
  const request = await requestOf(work, id, path);
  if (request.state === 'WAITING') return request;
  throw invalid(path, id, `it was ${request.state.toLowerCase()} already; one that waits`);
}

export type Requested = { requestId: string };

/** What is asked for on behalf of a need, beside what a person says. */
type Asked = Omit<z.output<typeof requestSaid>, 'clientKey'> & { needId?: string };

/** Puts a container, or some of it, on the list, within a larger act; last, until it is moved. */
export async function requestMade(work: Work, input: Asked): Promise<DryingRequest> {
  const { tx, labId } = work;
  const container = await containerOf(work, input.label);
  const { refusal } = await howDried(tx, container);
  const waiting = await waitingOf(work);
  const { dryGrams, plates, why, wantedBy = null, temperatureC = null, minutes = null } = input;
  const { priority, depthMm = null, readyAt = null, needId = null } = input;
  const wanted = { dryGrams, plates, temperatureC };
  checkRequest(
    container,
    refusal,
    wanted,
    waiting.filter(({ containerId }) => containerId === container.id),
  );
  if (depthMm !== null && container.kind === 'PLATE_BOX') {
    throw invalid('input.depthMm', depthMm, 'none: plates lie in no tray');
  }
  const position = positionBefore(waiting, null) ?? 0;
  const of = { containerId: container.id, dryGrams, plates, why, wantedBy, temperatureC, minutes, position };
  const more = { weight: priority ?? 1, depthMm, readyAt, needId };
  const request = await tx.dryingRequest.create({
    data: { id: newId(), labId, ...of, ...more, state: 'WAITING', madeAt: work.now },
  });
  work.changed('DryingRequest', request.id, 'MADE');
  return request;
}

/** Puts a container, or some of it, on the list; last, until it is moved. */
export function dryingRequested(context: Context, input: z.output<typeof requestSaid>): Promise<Requested> {
  return write(context, 'requestDrying', input, async (work) => {
    const { id } = await requestMade(work, input);
    return { requestId: id };
  });
}

/** Changes what a request that waits wants. */
export function dryingChanged(context: Context, input: z.output<typeof changeSaid>): Promise<Requested> {
  return write(context, 'setDryingRequest', input, async (work) => {
    const request = await waitingRequest(work, input.id, 'input.id');
    const container = await work.tx.container.findUniqueOrThrow({ where: { id: request.containerId } });
    const { wantedBy, temperatureC, minutes, priority, depthMm, readyAt } = input;
    if (typeof temperatureC === 'number') {
      const hot = (await howDried(work.tx, container)).refusal(temperatureC);
      if (hot) throw invalid('input.temperatureC', temperatureC, hot);
    }
    if (typeof depthMm === 'number' && container.kind === 'PLATE_BOX') {
      throw invalid('input.depthMm', depthMm, 'none: plates lie in no tray');
    }
    const weight = priority === undefined ? {} : { weight: priority ?? 1 };
    const given = Object.entries({ wantedBy, temperatureC, minutes, depthMm, readyAt });
    const changes = Object.fromEntries(given.filter(([, value]) => value !== undefined));
    await work.tx.dryingRequest.update({ where: { id: request.id }, data: { ...changes, ...weight } });
    work.changed('DryingRequest', request.id, 'CHANGED');
    return { requestId: request.id };
  });
}

/** Takes a request off the list, within a larger act. */
export async function requestWithdrawn(work: Work, id: string): Promise<void> {
  await work.tx.dryingRequest.update({ where: { id }, data: { state: 'WITHDRAWN', endedAt: work.now } });
  work.changed('DryingRequest', id, 'CHANGED');
  await requestEnded(work, id);
}

/** A request waits again, or goes on waiting, whatever was recorded of it. */
export async function requestWaits(work: Work, id: string): Promise<void> {
  await work.tx.dryingRequest.update({ where: { id }, data: { state: 'WAITING', endedAt: null, eventId: null } });
  work.changed('DryingRequest', id, 'CHANGED');
}

/** What a request waited for was dried. */
export async function requestAnswered(work: Work, id: string, eventId: string, endedAt: Date): Promise<void> {
  await work.tx.dryingRequest.update({ where: { id }, data: { state: 'DRIED', endedAt, eventId } });
  work.changed('DryingRequest', id, 'CHANGED');
  await requestEnded(work, id);
}

export function dryingWithdrawn(context: Context, input: z.output<typeof withdrawSaid>): Promise<Requested> {
  return write(context, 'withdrawDrying', input, async (work) => {
    const { id } = await waitingRequest(work, input.id, 'input.id');
    await requestWithdrawn(work, id);
    return { requestId: id };
  });
}

/** Puts a withdrawn request back where it was; one that waits stays as it is. */
export function dryingRestored(context: Context, input: z.output<typeof withdrawSaid>): Promise<Requested> {
  return write(context, 'restoreDrying', input, async (work) => {
    const { tx } = work;
    const request = await requestOf(work, input.id, 'input.id');
    const { id, state, containerId, dryGrams, plates, temperatureC } = request;
    if (state === 'WAITING') return { requestId: id };
    if (state === 'DRIED') throw invalid('input.id', input.id, 'it was dried already; undo that drying instead');
    const container = await tx.container.findUniqueOrThrow({ where: { id: containerId } });
    const { refusal } = await howDried(tx, container);
    const others = (await waitingOf(work)).filter((other) => other.containerId === containerId);
    checkRequest(container, refusal, { dryGrams, plates, temperatureC }, others);
    await tx.dryingRequest.update({ where: { id }, data: { state: 'WAITING', endedAt: null } });
    work.changed('DryingRequest', id, 'CHANGED');
    return { requestId: id };
  });
}

/** Puts a request before another, or last. */
export function dryingMoved(context: Context, input: z.output<typeof moveSaid>): Promise<Requested> {
  return write(context, 'moveDryingRequest', input, async (work) => {
    const request = await waitingRequest(work, input.id, 'input.id');
    const before = input.before ? await waitingRequest(work, input.before, 'input.before') : null;
    if (before?.id === request.id) throw invalid('input.before', input.before, 'another request');
    const place = async (id: string, position: number) => {
      await work.tx.dryingRequest.update({ where: { id }, data: { position } });
      work.changed('DryingRequest', id, 'CHANGED');
    };
    const others = (await waitingOf(work)).filter(({ id }) => id !== request.id);
    const position = positionBefore(others, before?.id ?? null);
    if (position !== null) await place(request.id, position);
    else {
      // Halved too often: number the whole list anew.
      const at = others.findIndex(({ id }) => id === before?.id);
      const all = [...others.slice(0, at), request, ...others.slice(at)];
      for (const [index, { id }] of all.entries()) await place(id, index + 1);
    }
    return { requestId: request.id };
  });
}
