// A container, or some of it, is put on the list.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Container, DryingRequest } from '../database/generated/sqlite/client.ts';
import { invalid, Refused } from '../errors.ts';
import { containerOf } from '../stock/service.ts';
import { newId, write, type Work } from '../work.ts';
import { howClassIsDried, howDried, type HowDried, ownRecipes } from './how-dried.ts';
import { checkRequest, positionBefore } from './rules.ts';
import { requestSaid } from './request-said.ts';
import { lastOf, type Requested } from './request.ts';

/** What is asked for on behalf of a need, beside what a person says. */
type Asked = Omit<z.output<typeof requestSaid>, 'clientKey'> & { needId?: string };

/** A request as it is written down, at a place of the list; refused where it may not be. */
function rowOf(
  { labId, now }: Work,
  container: Container,
  { refusal }: Pick<HowDried, 'refusal'>,
  others: readonly DryingRequest[],
  input: Asked,
  position: number,
): DryingRequest {
  const { dryGrams, plates, why, wantedBy = null, temperatureC = null, minutes = null } = input;
  const { priority, depthMm = null, readyAt = null, needId = null } = input;
  checkRequest(container, refusal, { dryGrams, plates, temperatureC }, others);
  if (depthMm !== null && container.kind === 'PLATE_BOX') {
    throw invalid('input.depthMm', depthMm, 'none: plates lie in no tray');
  }
  const of = { containerId: container.id, dryGrams, plates, why, wantedBy, temperatureC, minutes, position };
  const more = { weight: priority ?? 1, depthMm, readyAt, needId };
  return { id: newId(), labId, ...of, ...more, state: 'WAITING', madeAt: now, endedAt: null, eventId: null };
}

const endOfList = async (work: Work): Promise<number> => {
  const last = await lastOf(work);
  return positionBefore(last ? [last] : [], null) ?? 0;
};

/** Puts a container, or some of it, on the list, within a larger act; last, until it is moved. */
export async function requestMade(work: Work, input: Asked): Promise<DryingRequest> {
  const { tx, labId } = work;
  const container = await containerOf(work, input.label);
  const how = await howDried(tx, container);
  const waiting = await tx.dryingRequest.findMany({ where: { labId, state: 'WAITING', containerId: container.id } });
  const data = rowOf(work, container, how, waiting, input, await endOfList(work));
  const request = await tx.dryingRequest.create({ data });
  work.changed('DryingRequest', request.id, 'MADE');
  return request;
}

/** The same of many at once, in the order given; what is refused, as what somebody has asked for already, is left out. */
export async function requestsMade(work: Work, inputs: readonly Asked[]): Promise<void> {
  if (inputs.length === 0) return;
  const { tx, labId } = work;
  const containers = await tx.container.findMany({
    where: { labId, label: { in: inputs.map(({ label }) => label) } },
    include: { lot: { include: { sorbent: true } } },
  });
  const containerId = { in: containers.map(({ id }) => id) };
  const waiting = await tx.dryingRequest.findMany({ where: { labId, state: 'WAITING', containerId } });
  const own = await ownRecipes(tx, labId);
  const end = await endOfList(work);
  const rows: DryingRequest[] = [];
  for (const input of inputs) {
    const container = containers.find(({ label }) => label === input.label);
    if (!container) continue;
    const how = howClassIsDried(own, container.lot.sorbent.sorbentClass, container.backing);
    const others = [...waiting, ...rows].filter((one) => one.containerId === container.id);
    try {
      rows.push(rowOf(work, container, how, others, input, end + rows.length));
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
    }
  }
  await tx.dryingRequest.createMany({ data: rows });
  for (const { id } of rows) work.changed('DryingRequest', id, 'MADE');
}

/** Puts a container, or some of it, on the list; last, until it is moved. */
export function dryingRequested(context: Context, input: z.output<typeof requestSaid>): Promise<Requested> {
  return write(context, 'requestDrying', input, async (work) => {
    const { id } = await requestMade(work, input);
    return { requestId: id };
  });
}
