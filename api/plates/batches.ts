// Batches of prepared plates as they stand now: read, judged, put in the order of what to do with them.
import { DateTime } from 'luxon';
import type { Context } from '../context.ts';
import { roomNamed } from '../climate/service.ts';
import type { Container, Exposure, PlateRegime } from '../database/generated/sqlite/client.ts';
import { goneFromMs, leastHoodHoursOf, prepared, words, type Prepared } from '../stock/service.ts';
import { batchState, byWhatToDo, readiness, regimeWords, useOf, type BatchState, type Use } from './rules.ts';

export interface Batch {
  container: Container;
  state: BatchState;
  regime: PlateRegime | null;
  of: Prepared | null;
  use: Use;
  ready: boolean;
  /** Why they are not ready; empty where they are. */
  whyNot: string;
  goodUntil: Date | null;
  /** When the solvent may be called gone; null where there is none. */
  solventGoneFrom: Date | null;
}

/** Of one box; null where nothing was done to its plates. */
export function batchOf(context: Context, container: Container, exposure: Exposure | null): Batch | null {
  const state = container.kind === 'PLATE_BOX' ? batchState(container, context.now()) : null;
  if (!state) return null;
  const { wettedAt, hoodAt, regime } = container;
  const of = prepared.nullable().parse(container.prepared);
  const { ready, why } = readiness(regime, exposure?.state ?? null, container.plates ?? 0);
  const hours = exposure?.hoursToLimit ?? null;
  const untilMs = ready && exposure && hours !== null ? exposure.asOf.getTime() + hours * 3_600_000 : null;
  return {
    container,
    state,
    regime,
    of,
    use: useOf(of, wettedAt !== null),
    ready,
    whyNot: why,
    goodUntil: untilMs === null ? null : new Date(Math.round(untilMs)),
    solventGoneFrom: wettedAt
      ? new Date(goneFromMs({ wettedAt, hoodAt }, leastHoodHoursOf(context.lab.settings)))
      : null,
  };
}

export interface BatchFilter {
  state?: readonly BatchState[] | null | undefined;
  regime?: PlateRegime | null | undefined;
  room?: string | null | undefined;
  /** Only those that are ready, or only those that are not. */
  ready?: boolean | null | undefined;
}

/** Batches in use; what was used up is no batch any more. */
export async function plateBatches(context: Context, filter: BatchFilter): Promise<Batch[]> {
  const { database, lab } = context;
  const room = filter.room ? await roomNamed(database.read, lab.id, filter.room, 'room') : null;
  const rows = await database.read.container.findMany({
    where: {
      labId: lab.id,
      kind: 'PLATE_BOX',
      isVoid: false,
      finishedAt: null,
      ...(room && { roomId: room.id }),
      ...(filter.regime && { regime: filter.regime }),
      OR: [{ wettedAt: { not: null } }, { touchedSolventAt: { not: null } }, { regime: { not: null } }],
    },
    include: { exposure: true },
  });
  const all = rows.flatMap((row) => batchOf(context, row, row.exposure) ?? []);
  return all
    .filter(({ state, ready }) => {
      const inState = !filter.state || filter.state.includes(state);
      return inState && (typeof filter.ready !== 'boolean' || filter.ready === ready);
    })
    .sort((one, other) => byWhatToDo(placeOf(one), placeOf(other)));
}

const placeOf = ({ state, goodUntil, container }: Batch) => ({
  state,
  goodUntilMs: goodUntil?.getTime() ?? null,
  label: container.label,
});

/** An instant on the lab's clock. */
const onClock = (context: Context, at: Date): string =>
  DateTime.fromJSDate(at, { zone: context.lab.timeZone }).setLocale('en').toFormat('d LLL HH:mm');

function stateWords(context: Context, { state, of, regime, container, solventGoneFrom }: Batch): string {
  const solvent = of?.preWash?.solvent ?? 'solvent';
  const clock = (at: Date | null) => (at ? onClock(context, at) : '');
  switch (state) {
    case 'WET':
      return container.hoodAt
        ? `wet with ${solvent}, in the tank until ${clock(container.hoodAt)}`
        : `wet with solvent since ${clock(container.wettedAt)}`;
    case 'DRYING':
      return `drying in the hood; the solvent may be called gone from ${clock(solventGoneFrom)}`;
    case 'DRY':
      return of?.preWash
        ? `pre-washed with ${solvent} and dry of it, not activated yet`
        : 'dry of solvent, not washed since';
    case 'ACTIVATED':
    case 'EQUILIBRATED':
      return regimeWords(regime ?? 'DRY_UNTIL_SPOTTED', container.regimeHumidityPercent);
  }
}

/** A batch in one sentence without a full stop. */
export function sentenceOf(context: Context, batch: Batch): string {
  const { container, regime, ready, whyNot, goodUntil } = batch;
  const parts = [words.plates(container.plates ?? 0), stateWords(context, batch)];
  if (regime && !ready) parts.push(whyNot);
  if (ready) parts.push(goodUntil ? `good until ${onClock(context, goodUntil)}` : 'good as they stand');
  return `${parts[0]} ${parts.slice(1).join('; ')}`;
}
