// A run by the oven: what stands under the thumb in each state, what is minded beside it, and what locks it.
import { ovenCaution } from '../act/cautions.ts';
import { typedNumber } from '../say/water.ts';
import * as acts from './acts.ts';
import type { Load, Run } from './questions.ts';

const rules = 'Follow your lab’s rules and the safety data sheet.';

interface Step {
  /** On the button. */
  words: string;
  /** In the past, for the message at the foot. */
  done: string;
  act: typeof acts.startRunAct;
}

export const started: Step = { words: 'Started: door closed', done: 'Started', act: acts.startRunAct };
export const door: Step = { words: 'Door opened', done: 'Door opened', act: acts.openDoorAct };
export const out: Step = { words: 'Out of the oven', done: 'Out of the oven', act: acts.takeOutAct };
export const cooled: Step = { words: 'Cooled', done: 'Cooled', act: acts.cooledAct };

/** What the next click says; null once only results are wanted. */
export function stepOf({ state }: Pick<Run, 'state'>): Step | null {
  if (state === 'PLANNED') return started;
  if (state === 'IN_OVEN') return out;
  return state === 'COOLING' ? cooled : null;
}

/** When somebody has to see to it next, in milliseconds; first of all the oven is set. */
export function nextOf(
  { state, setAt, setupMinutes, start, end, coolMinutes, cooledAt }: Omit<Run, 'loads'>,
  now: Date,
): { at: number; isSetting: boolean } {
  const at = (instant: string) => ({ at: Date.parse(instant), isSetting: false });
  if (state === 'IN_OVEN') return at(end);
  if (state === 'COOLING') return { at: Date.parse(end) + coolMinutes * 60_000, isSetting: false };
  if (state !== 'PLANNED') return at(cooledAt ?? end);
  const isSetting = setupMinutes > 0 && now.getTime() < Date.parse(setAt);
  return isSetting ? { at: Date.parse(setAt), isSetting } : at(start);
}

/** Why none of it may go in, by label; empty when all may. */
export function locked({ loads }: Pick<Run, 'loads'>): { label: string; why: string }[] {
  return loads.flatMap(({ container }) => {
    const { label, kind, solventWetAt, touchedSolventAt } = container;
    if (solventWetAt !== null)
      return [{ label, why: 'it is wet with solvent: record on its page that the solvent is gone, then it may go in' }];
    const why = ovenCaution({ kind, touchedSolventAt });
    return why === null ? [] : [{ label, why }];
  });
}

/** What to mind at the step that comes next, in one breath. */
export function cautionOf({
  state,
  isVacuum,
  oven,
  loads,
}: Pick<Run, 'state' | 'isVacuum' | 'oven' | 'loads'>): string {
  const vacuum = isVacuum || oven.kind === 'VACUUM';
  const of = (test: (load: Load) => boolean) => loads.some(test);
  const said: string[] = [];
  if (state === 'PLANNED') {
    if (vacuum)
      said.push('Shield the glass. Cover trays and pump slowly, or powder jumps; trap and exhaust lead to a hood.');
    if (of(({ container }) => container.backing === 'PLASTIC'))
      said.push('Plastic-backed plates lie flat on glass or metal, or they curl.');
    if (of(({ plates, dryGrams }) => plates === null && (dryGrams ?? 0) > 0))
      said.push('Fill trays in a hood or with the mask your lab prescribes.');
  }
  if (state === 'IN_OVEN') {
    said.push('Heat gloves.');
    if (vacuum) said.push('Let air or nitrogen in slowly; the glass stays shielded.');
    said.push('Into a desiccator hot, but not sealed at once.');
  }
  if (state === 'COOLING' && of(({ container }) => container.sorbent.sorbentClass === 'alumina'))
    said.push('This dries alumina; it does not make grade I.');
  return said.length === 0 ? '' : `${said.join(' ')} ${rules}`;
}

/** How one load's result is known, as it is typed. */
export interface TypedResult {
  how: 'model' | 'weighed' | 'water';
  grams: string;
  percent: string;
  vessel: string;
  room: string;
}

export const noResult: TypedResult = { how: 'model', grams: '', percent: '', vessel: '', room: '' };

/** Some of a container goes into one of its own; all of it stays where it is. */
export function isPart({ dryGrams, plates, container }: Pick<Load, 'dryGrams' | 'plates' | 'container'>): boolean {
  if (plates !== null) return plates < (container.plates ?? 0);
  return dryGrams !== null && dryGrams < container.dryGrams - 1e-3;
}

interface Result {
  load: string;
  waterFraction?: number;
  netGrams?: number;
  vessel?: string;
  room?: string;
}

/** What the API takes of what was typed; or what is wrong, by load. */
export function resultsOf(
  loads: readonly Load[],
  typed: Readonly<Record<string, TypedResult>>,
): { results: Result[]; wrong: Record<string, string> } {
  const results: Result[] = [];
  const wrong: Record<string, string> = {};
  for (const { id } of loads) {
    const { how, grams, percent, vessel, room } = typed[id] ?? noResult;
    const number = how === 'weighed' ? typedNumber(grams) : how === 'water' ? typedNumber(percent) : null;
    if (how !== 'model' && number === null) {
      wrong[id] = how === 'weighed' ? 'grams without the tray, such as 118.4' : 'a percentage such as 0.4';
      continue;
    }
    const measured =
      number === null
        ? {}
        : how === 'weighed'
          ? { netGrams: number }
          : { waterFraction: Number((number / 100).toPrecision(12)) };
    const into = { ...(vessel === '' ? {} : { vessel }), ...(room === '' ? {} : { room }) };
    if (how !== 'model' || vessel !== '' || room !== '') results.push({ load: id, ...measured, ...into });
  }
  return { results, wrong };
}

/** The load that a refusal is about, by the place in what was told; null when it is about none. */
export function refusedLoad(path: string, results: readonly { load: string }[]): string | null {
  const at = /results\.(\d+)/.exec(path)?.[1];
  return at === undefined ? null : (results[Number(at)]?.load ?? null);
}

/** Runs that ask for a hand, the soonest first: all that are under way, and the next of each oven. */
export function atHand(runs: readonly Run[], now: Date): Run[] {
  const seen = new Set<string>();
  const next = [...runs]
    .sort((a, b) => Date.parse(a.start) - Date.parse(b.start))
    .filter(({ state, oven }) => {
      if (state === 'FINISHED' || state === 'INTERRUPTED') return false;
      if (state !== 'PLANNED') return true;
      if (seen.has(oven.id)) return false;
      seen.add(oven.id);
      return true;
    });
  return next.sort((a, b) => nextOf(a, now).at - nextOf(b, now).at);
}
