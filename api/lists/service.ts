// The lab's own list comes in, all or nothing, and can be taken back while nothing happened to it since.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { refresh } from '../exposure/service.ts';
import { invalid, Refused, type Problem } from '../errors.ts';
import { takenBackMany } from '../stock/service.ts';
import { write, type Work } from '../work.ts';
import { bookedRows } from './book.ts';
import { knownOf } from './known.ts';
import { answersSaid, listOf, readAgain, receiptSaid } from './stored.ts';
import type { Understood } from './understood.ts';

// How tables of text are read, for whoever else takes one.
export type { DateOrder } from '../climate/service.ts';
export { dayIn, orderOf, tillNow } from './days.ts';
export { delimitedSheet } from './delimited.ts';
export { numberIn } from './numbers.ts';
export { cellText, isEmptyRow } from './sheet.ts';

const clientKey = z.string().min(1, 'a key of your own').max(200, 'at most 200 signs').nullish();
export const receiveListSaid = z.object({ list: z.string('the id of a list'), answers: answersSaid, clientKey });
export const takeListBackSaid = z.object({ list: z.string('the id of a list'), clientKey });

export type ListReceived = { listId: string; containerIds: string[]; notes: string[]; already: boolean };

/** More problems than these help nobody. */
const mostProblems = 1_000;
/** Of more than these the background pass takes care; nobody waits for them. */
const mostEstimated = 40;

const spoken = (n: number, one: string) => `${n} ${n === 1 ? one : `${one}s`}`;

/** Refuses a list that is not whole, with everything that is wrong. */
function checkWhole(name: string, { problems, questions, rows }: Understood): void {
  const open = questions.map(({ key, about }): Problem => ({
    line: null,
    column: null,
    value: key,
    message: `missing input.answers, ${about}`,
    expected: about,
  }));
  const all = [...open, ...problems];
  if (all.length > 0) {
    const [first] = all;
    const at = first?.line === null || first === undefined ? '' : `line ${first.line}: `;
    const lines = new Set(problems.flatMap(({ line }) => line ?? [])).size;
    const what = [
      ...(problems.length > 0 ? [`${spoken(problems.length, 'problem')} in ${spoken(lines, 'line')}`] : []),
      ...(open.length > 0 ? [spoken(open.length, 'open question')] : []),
    ].join(' and ');
    const expected = 'every line whole and every question answered; nothing came in';
    const message = `invalid input.list: ${name}, ${what}; first ${at}${first?.message ?? ''}`;
    throw new Refused(message, 'input.list', expected, all.slice(0, mostProblems));
  }
  if (rows.length === 0) throw invalid('input.list', name, 'a list with at least one line to book');
}

/** Books a whole list, or refuses it whole. A list that came in already is answered with what came of it then. */
export async function receivedList(context: Context, input: z.output<typeof receiveListSaid>): Promise<ListReceived> {
  const done = await write(context, 'receiveList', input, async (work): Promise<ListReceived> => {
    const { tx, labId, now } = work;
    const list = await listOf(tx, labId, input.list, 'input.list');
    if (list.bookedAt && !list.takenBackAt) {
      const { containerIds, notes } = receiptSaid.parse(list.receipt);
      return { listId: list.id, containerIds, notes, already: true };
    }
    const known = await knownOf(tx, context.lab, now);
    const { understood, answers } = await readAgain(tx, list, input.answers, known);
    checkWhole(list.name, understood);
    const { containerIds, eventIds, notes } = await bookedRows(context, work, understood.rows, understood.makes);
    const all = [...understood.notes, ...notes];
    await tx.stockList.update({
      where: { id: list.id },
      data: {
        headings: understood.headings,
        answers: { ...answers, columns: understood.columns.map(({ column, field }) => ({ column, field })) },
        receipt: { containerIds, eventIds, notes: all },
        bookedAt: now,
        takenBackAt: null,
      },
    });
    work.changed('StockList', list.id, 'CHANGED');
    return { listId: list.id, containerIds, notes: all, already: false };
  });
  if (!done.already && done.containerIds.length <= mostEstimated && !context.estimateLater)
    await refresh(context, done.containerIds);
  return done;
}

async function happenedSince(work: Work, containerIds: string[], eventIds: readonly string[]): Promise<string[]> {
  const { tx, labId } = work;
  const own = new Set(eventIds);
  const touched = new Set<string>();
  const chunk = 500;
  for (let from = 0; from < containerIds.length; from += chunk) {
    const ids = containerIds.slice(from, from + chunk);
    const among = { in: ids };
    const events = await tx.event.findMany({
      where: { labId, stands: true, OR: [{ containerId: among }, { otherContainerId: among }] },
      select: { id: true, containerId: true, otherContainerId: true },
    });
    for (const { id, containerId, otherContainerId } of events) {
      if (own.has(id)) continue;
      touched.add(containerId);
      if (otherContainerId) touched.add(otherContainerId);
    }
    const kept = await tx.hold.findMany({ where: { containerId: among, releasedAt: null } });
    const waiting = await tx.dryingRequest.findMany({ where: { containerId: among, state: 'WAITING' } });
    for (const { containerId } of [...kept, ...waiting]) touched.add(containerId);
  }
  const ids = containerIds.filter((id) => touched.has(id)).slice(0, 8);
  const rows = await tx.container.findMany({ where: { id: { in: ids } }, select: { label: true } });
  return rows.map(({ label }) => label).sort();
}

/** Takes a whole list back by corrections; refused where something happened to one of its containers since. */
export function listTakenBack(context: Context, input: z.output<typeof takeListBackSaid>) {
  return write(context, 'takeListBack', input, async (work) => {
    const { tx, labId, now } = work;
    const list = await listOf(tx, labId, input.list, 'input.list');
    if (!list.bookedAt) throw invalid('input.list', list.name, 'a list that came in; nothing of this one did');
    const { containerIds, eventIds } = receiptSaid.parse(list.receipt);
    if (list.takenBackAt) return { listId: list.id, containers: containerIds.length };
    const labels = await happenedSince(work, containerIds, eventIds);
    if (labels.length > 0) {
      const of = `${labels.join(', ')}${labels.length === 8 ? ', …' : ''}`;
      throw invalid(
        'input.list',
        list.name,
        `something happened since to ${of}: take that back first, or correct those one by one`,
      );
    }
    await takenBackMany(work, containerIds, eventIds, `the list ${list.name} was taken back`);
    await tx.stockList.update({ where: { id: list.id }, data: { takenBackAt: now } });
    work.changed('StockList', list.id, 'CHANGED');
    return { listId: list.id, containers: containerIds.length };
  });
}
