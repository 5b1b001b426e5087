// Where a request is on its way through the ovens, in the bench's own words, from the runs that hold its loads.
import type { Load, Run } from '../heat/questions.ts';
import { trayWords } from '../heat/words.ts';
import type { Clock } from '../say/state.ts';
import { labClock, spokenTime } from '../say/time.ts';

export interface Stage {
  words: string;
  /** The run that somebody has to see to next; null while none is planned. */
  run: Run | null;
  /** It is in an oven or came out of one: what is left to do is done there. */
  isUnderWay: boolean;
}

/** What is furthest on the way speaks for all of it. */
const order = ['IN_OVEN', 'COOLED', 'COOLING', 'PLANNED'] as const;

export function stageOf(requestId: string, runs: readonly Run[], { now, zone }: Clock): Stage {
  const mine = runs
    .filter(({ loads }) => loads.some(({ request }) => request.id === requestId))
    .sort((a, b) => Date.parse(a.start) - Date.parse(b.start));
  const state = order.find((one) => mine.some((run) => run.state === one));
  const run = mine.find((one) => one.state === state) ?? null;
  if (!run) return { words: 'waiting', run: null, isUnderWay: false };
  const said = (at: string | number) => spokenTime(new Date(at), now, zone);
  const more = mine.length > 1 ? `, in ${mine.length} runs` : '';
  const isUnderWay = run.state !== 'PLANNED';
  const of = (words: string): Stage => ({ words: `${words}${more}`, run, isUnderWay });
  if (run.state === 'IN_OVEN') return of(`in ${run.oven.name} until ${said(run.end)}`);
  if (run.state === 'COOLED') return of('cooled: weigh it, or take the model’s figure');
  if (run.state === 'COOLING') return of(`cooling until ${said(Date.parse(run.end) + run.coolMinutes * 60_000)}`);
  const late = run.minutesLate > 5 ? ', not begun yet' : '';
  return of(`planned ${said(run.start)}, ${run.oven.name}${late}`);
}

const loadsOf = (requestId: string, runs: readonly Run[]): Load[] =>
  runs.flatMap(({ loads }) => loads.filter(({ request }) => request.id === requestId));

/** "2 trays 10 mm deep" of all its loads together; empty before it is planned, then what was asked. */
export function traysOf(request: { id: string; depthMm: number | null }, runs: readonly Run[]): string {
  const [first, ...more] = loadsOf(request.id, runs);
  if (!first) return request.depthMm === null ? '' : `trays ${request.depthMm}\u00a0mm deep`;
  const trays = more.reduce((sum, load) => sum + load.trays, first.trays);
  return trayWords({ ...first, trays });
}

/** The page of the ovens with a run opened on its day. */
export const runPath = ({ id, start }: Run, zone: string): string =>
  `/ovens?day=${labClock(new Date(start), zone).slice(0, 10)}&run=${encodeURIComponent(id)}`;
