// Events by which nothing is made: each mutation's input, and the one way they are all recorded.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Closure, Container } from '../database/generated/sqlite/client.ts';
import { write, type Work } from '../work.ts';
import { countSaid } from './count.ts';
import { containerOf, personOf, roomOf } from './find.ts';
import { inOvenOf, inOvenSaid } from './in-oven.ts';
import { happened, type Happens, type SaidOf } from './happen.ts';
import type { Recorded } from './record.ts';
import { eventInput, said } from './said.ts';
import { weighingSaid } from './weighing.ts';

const amount = { grams: said.grams, basis: said.basis, plates: said.plates };
const plain = z.object(eventInput);

/** Reference temperature of the isotherm: what an equilibration is taken at when nobody says. */
const usualTemperatureC = 25;

const usual = (closure: Closure): Closure => (closure === 'OPEN' ? 'WELL_CLOSED' : closure);

interface Act<T extends Happens, S extends z.ZodType> {
  type: T;
  said: S;
  /** What the way of the type is told. */
  to: (input: z.output<S>, work: Work, container: Container) => SaidOf<T> | Promise<SaidOf<T>>;
}

const act = <T extends Happens, S extends z.ZodType>(type: T, said: S, to: Act<T, S>['to']): Act<T, S> => ({
  type,
  said,
  to,
});

export const acts = {
  openContainer: act('OPENED', plain, () => ({})),
  closeContainer: act(
    'CLOSED',
    z.object({
      ...eventInput,
      closure: said.closure.exclude(['OPEN'], 'a closure; to open it, openContainer').nullish(),
    }),
    ({ closure }, _, { usualClosure }) => ({ closure: closure ?? usual(usualClosure) }),
  ),
  moveContainer: act('MOVED', z.object({ ...eventInput, room: said.name }), async ({ room }, work) => ({
    roomId: (await roomOf(work, room)).id,
  })),
  mixContainer: act('MIXED', plain, () => ({})),
  recordDrying: act(
    'DRIED',
    z.object({
      ...eventInput,
      temperatureC: said.celsius.nullish(),
      minutes: said.minutes.nullish(),
      vacuum: z.boolean().nullish(),
      waterFraction: said.waterFraction.nullish(),
      ...inOvenSaid,
    }),
    ({ temperatureC, minutes, vacuum, waterFraction, ...rest }) => ({
      ...{ temperatureC, minutes, vacuum, waterFraction },
      ...inOvenOf(rest),
    }),
  ),
  recordEquilibration: act(
    'EQUILIBRATED',
    z.object({ ...eventInput, humidityPercent: said.percent, temperatureC: said.celsius.nullish() }),
    ({ humidityPercent, temperatureC }) => ({ humidityPercent, temperatureC: temperatureC ?? usualTemperatureC }),
  ),
  recordWeighing: act(
    'WEIGHED',
    weighingSaid.extend(eventInput),
    ({ method, temperatureC, of, waterFraction, basis, grossGrams, tareGrams }) => ({
      method,
      temperatureC,
      of,
      waterFraction,
      basis,
      grossGrams,
      tareGrams,
    }),
  ),
  recordCount: act('COUNTED', countSaid.extend(eventInput), ({ grams, basis, plates, grossGrams, tareGrams }) => ({
    grams,
    basis,
    plates,
    grossGrams,
    tareGrams,
  })),
  recordLoss: act('LOST', z.object({ ...eventInput, ...amount, why: said.text }), ({ grams, basis, plates, why }) => ({
    grams,
    basis,
    plates,
    why,
  })),
  recordSolvent: act('TOUCHED_SOLVENT', z.object({ ...eventInput, what: said.text }), ({ what }) => ({ what })),
  preWash: act('PRE_WASHED', z.object({ ...eventInput, solvent: said.text }), ({ solvent }) => ({ solvent })),
  solventGone: act('SOLVENT_GONE', plain, () => ({})),
  recordSolventGone: act(
    'SOLVENT_GONE',
    z.object({ ...eventInput, by: said.name.nullish() }),
    async ({ by }, work) => ({ seenBy: by ? (await personOf(work, by)).shortName : null }),
  ),
  conditionColumn: act(
    'CONDITIONED',
    z.object({
      ...eventInput,
      mobilePhase: said.text,
      columnVolumes: said.columnVolumes.nullish(),
      minutes: said.minutes.nullish(),
      flowMlPerMin: said.ml.nullish(),
    }),
    ({ mobilePhase, columnVolumes, minutes, flowMlPerMin }) => ({ mobilePhase, columnVolumes, minutes, flowMlPerMin }),
  ),
  interrupt: act('INTERRUPTED', z.object({ ...eventInput, why: said.text }), ({ why }) => ({ why })),
  recordNotFound: act('NOT_FOUND', z.object({ ...eventInput, why: said.text }), ({ why }) => ({ why })),
  spendOnCheck: act(
    'SPENT_ON_CHECK',
    z.object({ ...eventInput, ...amount, what: said.text }),
    ({ grams, basis, plates, what }) => ({ grams, basis, plates, what }),
  ),
  setHabit: act(
    'HABIT_SET',
    z.object({
      ...eventInput,
      timesADay: z.number('times a day').min(0, '0 or more').max(200, 'at most 200 a day'),
      minutes: said.minutes.max(1440, 'at most 1440 min'),
    }),
    ({ timesADay, minutes }) => ({ habit: timesADay === 0 ? null : { timesADay, minutes } }),
  ),
  setScooping: act('HABIT_SET', z.object({ ...eventInput, scooping: said.scooping }), ({ scooping }) => ({ scooping })),
  finishContainer: act('USED_UP', plain, () => ({})),
  discardContainer: act(
    'DISCARDED',
    z.object({ ...eventInput, ...amount, why: said.text }),
    ({ grams, basis, plates, why }) => ({ grams, basis, plates, why }),
  ),
};

export type ActName = keyof typeof acts;

interface EventInput {
  label: string;
  at?: Date | null | undefined;
  note: string | null;
  clientKey?: string | null | undefined;
}

/** Records what one of the acts says. */
export function told<N extends ActName>(
  context: Context,
  name: N,
  input: z.output<(typeof acts)[N]['said']>,
): Promise<Recorded> {
  const { type, to } = acts[name] as unknown as Act<Happens, z.ZodType<EventInput>>;
  const event: EventInput = input;
  return write(context, name, event, async (work) => {
    const container = await containerOf(work, event.label);
    const said = await to(event, work, container);
    return happened(work, { type, container, at: event.at ?? work.now, note: event.note, said });
  });
}
