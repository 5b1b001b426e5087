// What a script asks: can so much of a sorbent be had dry by a time? From which containers, after which drying; or what
// stands in the way, and the first time it could be. And the same of any need, before it is told. Nothing is written.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Need } from '../database/generated/sqlite/client.ts';
import type { PlannedStep } from '../science/prep/stages.ts';
import { said } from '../stock/service.ts';
import { planBroughtUp } from './current.ts';
import { amountOf, factsOf, preparedOf, type Stocked, withStock } from './facts.ts';
import { columnsOf, checkTime } from './need-columns.ts';
import { groundOf } from './ground.ts';
import { lackWords, obstacleIn, type Obstacle } from './obstacle.ts';
import { openNeeds, plannedNeeds } from './plan.ts';
import { Shelf } from './reserve.ts';
import { needFields, type NeedSaid } from './said.ts';

export const previewSaid = z.object(needFields);

export const availableSaid = z.object({
  sorbent: said.name,
  dryGrams: needFields.dryGrams.unwrap().unwrap(),
  by: z.date('an instant'),
  limitWaterFraction: needFields.limitWaterFraction,
  lotNumber: needFields.lotNumber,
});

export interface Availability {
  can: boolean;
  by: Date;
  dryGrams: number | null;
  plates: number | null;
  shares: { container: Stocked; amount: number; mustDry: boolean; isPlates: boolean }[];
  steps: PlannedStep[];
  obstacle: Obstacle | null;
  firstPossible: Date | null;
}

/** Any id: what is only asked about has none. */
const nobody = 'ffffffff-ffff-ffff-ffff-ffffffffffff';

/** What would come of a need beside all that is planned. */
export async function availabilityOf(
  context: Context,
  said: Omit<NeedSaid, 'weekdays' | 'untilDay' | 'clientKey'>,
): Promise<Availability> {
  await planBroughtUp(context);
  const { database, lab } = context;
  const reader = database.read;
  const now = context.now();
  const under = 'input';
  checkTime(said.at, now);
  const columns = await columnsOf({ tx: reader, labId: lab.id }, said, lab.timeZone, under);
  const need = {
    ...columns,
    id: nobody,
    labId: lab.id,
    seriesId: null,
    madeAt: now,
    changedAt: now,
    metAt: null,
    droppedAt: null,
    obstacle: null,
    firstPossibleAt: null,
  } as Need;
  const others = await openNeeds(reader, lab.id, now);
  const prep = await factsOf(reader, lab, [...others, need], now);
  const facts = prep.needs.at(-1);
  if (!facts) throw new Error('nothing was asked about');
  const isPlates = need.kind === 'PLATES';
  const choice = await new Shelf(reader, lab.id).choiceFor(facts);
  const amount = amountOf(facts);
  const about = { by: said.at, dryGrams: isPlates ? null : amount, plates: isPlates ? amount : null };
  if (choice.shares === null) {
    return { ...about, can: false, shares: [], steps: [], obstacle: lackWords(facts, choice), firstPossible: null };
  }
  const ids = choice.shares.map(({ containerId }) => containerId);
  const rows = await reader.container.findMany({ where: { id: { in: ids } }, ...withStock });
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  const shares = choice.shares.flatMap(({ containerId, amount, mustDry }) => {
    const container = rowOf.get(containerId);
    return container ? [{ container, amount, mustDry, isPlates }] : [];
  });
  // As if it were kept.
  const kept = shares.map(({ container, amount }) => ({
    holdId: '',
    container,
    amount,
    prepared: preparedOf(container),
    driedAt: null,
    conditionedAt: null,
  }));
  const asked = { ...facts, kept };
  const ground = await groundOf(reader, lab, now, said.at);
  const planned = plannedNeeds({ ...prep, needs: [...prep.needs.slice(0, -1), asked] }, ground, lackingOf(others));
  const mine = planned.at(-1);
  return {
    ...about,
    can: mine?.obstacle === null,
    shares,
    steps: mine?.steps ?? [],
    obstacle: mine?.obstacle ?? null,
    firstPossible: mine?.firstPossible ?? null,
  };
}

/** Needs without stock are not planned, here as there. */
const lackingOf = (needs: readonly Need[]): Map<string, Obstacle> =>
  new Map(
    needs.flatMap(({ id, obstacle }) => {
      const read = obstacleIn(obstacle);
      return read?.what === 'stock' ? [[id, read] as const] : [];
    }),
  );

export const available = (context: Context, input: z.output<typeof availableSaid>): Promise<Availability> =>
  availabilityOf(context, {
    kind: 'SORBENT',
    sorbent: input.sorbent,
    dryGrams: input.dryGrams,
    at: input.by,
    limitWaterFraction: input.limitWaterFraction,
    lotNumber: input.lotNumber,
    forWhom: 'asked',
  });
