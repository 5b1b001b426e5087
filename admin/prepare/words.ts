// The words of a prep sheet: times, what goes on by itself after a step, cautions once, what changed since it was printed.
import type { StepKind } from '../need/questions.ts';
import { dayAfter } from '../need/words.ts';
import { labClock, spokenDay } from '../say/time.ts';
import { count } from '../say/words.ts';
import type { Part, Sheet, SheetLine, Step, Stream } from './questions.ts';

/** Steps that wait by themselves: told after the step that they follow, without a box of their own. */
const waiting: ReadonlySet<StepKind> = new Set(['COOL', 'KEEP', 'REST']);
export const isWaiting = (kind: StepKind): boolean => waiting.has(kind);

/** Out of the hood on a later sheet: on this one it only goes in. */
const staysInHood = ({ kind, endAt }: Step, { to }: Pick<Sheet, 'to'>): boolean => kind === 'AIR_DRY' && endAt >= to;

export const partWord: Record<Part, string> = { MORNING: 'morning', EVENING: 'evening' };

/** The part of a day in which a clock time lies. */
export const partAt = (clock: string, eveningFrom: string): Part => (clock >= eveningFrom ? 'EVENING' : 'MORNING');

/** Which sheets somebody will want before the network is asked again: what is up now, and what comes after it. */
export function sheetsAhead(clock: string, eveningFrom: string): { on: string; part: Part }[] {
  const today = clock.slice(0, 10);
  const now = partAt(clock.slice(11), eveningFrom);
  const next: Part = now === 'MORNING' ? 'EVENING' : 'MORNING';
  return [
    { on: today, part: now },
    { on: now === 'MORNING' ? today : dayAfter(today, 1), part: next },
  ];
}

/** A tick of it waits to be sent. */
export const waitsToBeTold = (
  { act, input }: { act: string; input: Record<string, unknown> },
  stepId: string,
): boolean => {
  const among = (ids: unknown): boolean => Array.isArray(ids) && ids.includes(stepId);
  return (
    (act === 'tickStep' && input['id'] === stepId) ||
    (act === 'tickSteps' && among(input['ids']) && !among(input['except']))
  );
};

export interface Row {
  of: SheetLine;
  /** What goes on by itself afterwards. */
  then: SheetLine[];
  /** Cautions that stand already at an earlier step: at what clock time; null where they stand here. */
  cautionsAt: string | null;
  cautions: string;
}

const lastWord = 'Follow your lab’s rules and the safety data sheet.';

/** Several cautions as one short paragraph, which ends as each of them does. */
export function cautionWords(cautions: Step['cautions']): string {
  if (cautions.length === 0) return '';
  return [...cautions.map(({ text }) => text.replace(lastWord, '').trim()), lastWord].join(' ');
}

export const clockWords = (at: string, zone: string): string => labClock(new Date(at), zone).slice(11);

/** From when to when: "17:40 to 18:50", with the day where it ends on another. */
export function spanWords({ startAt, endAt }: Pick<Step, 'startAt' | 'endAt'>, zone: string): string {
  const [from, to] = [new Date(startAt), new Date(endAt)];
  const day = spokenDay(to, from, zone);
  const end = clockWords(endAt, zone);
  return `${clockWords(startAt, zone)} to ${day === 'today' ? end : `${day === 'tomorrow' ? 'next day' : day} ${end}`}`;
}

/** When somebody is wanted for it: at its start, for what comes out of the hood or is handed over at its end. */
const wantedAt = ({ kind, startAt, endAt }: Step): string =>
  kind === 'AIR_DRY' || kind === 'HAND_OVER' ? endAt : startAt;

/** The lines to tick, each with what goes on by itself after it; the same cautions stand once. */
export function rowsOf(sheet: Pick<Sheet, 'steps' | 'to'>, zone: string): Row[] {
  const rows: Row[] = [];
  const said = new Map<string, string>();
  const waits = ({ step }: SheetLine): boolean => isWaiting(step.kind) || staysInHood(step, sheet);
  const toTick = sheet.steps.filter((of) => !waits(of)).sort((a, b) => (wantedAt(a.step) < wantedAt(b.step) ? -1 : 1));
  for (const of of [...toTick, ...sheet.steps.filter(waits)]) {
    if (waits(of)) {
      const before = rows.findLast(
        ({ of: { need, step } }) => need.id === of.need.id && step.startAt <= of.step.startAt && !step.doneAt,
      );
      before?.then.push(of);
      continue;
    }
    const cautions = cautionWords(of.step.cautions);
    const cautionsAt = said.get(cautions) ?? null;
    if (cautions !== '' && cautionsAt === null && !of.step.doneAt)
      said.set(cautions, clockWords(wantedAt(of.step), zone));
    rows.push({ of, then: [], cautionsAt, cautions });
  }
  return rows;
}

const waitingWord: Partial<Record<StepKind, string>> = {
  AIR_DRY: 'air-dry',
  COOL: 'cool',
  KEEP: 'keep dry',
  REST: 'rest until heat and bubbles are gone',
};

/** "then cool in the desiccator until 13:20". */
export function thenWords({ step }: SheetLine, zone: string): string {
  const until = spanWords(step, zone).replace(/^.* to /, 'until ');
  const oven = step.kind === 'AIR_DRY' ? '; wet with solvent they never go near an oven' : '';
  return `then ${waitingWord[step.kind] ?? step.name} in the ${step.place} ${until}${oven}`;
}

/** When it is to be done, as it stands before its line. */
export function timeWords(step: Step, zone: string): string {
  if (step.kind === 'AIR_DRY') return `from ${clockWords(step.endAt, zone)}`;
  return step.kind === 'HAND_OVER' ? clockWords(step.endAt, zone) : spanWords(step, zone);
}

/** The sentence without its kind, which stands large before it. */
export function splitSentence({ sentence, step }: SheetLine): { head: string; rest: string } {
  if (step.kind === 'AIR_DRY') {
    const much = step.plates === null ? '' : `${count(step.plates, 'plate')}, `;
    return { head: 'Out of the hood', rest: `${much}the solvent gone, by time` };
  }
  const head = step.name.charAt(0).toUpperCase() + step.name.slice(1);
  return sentence.startsWith(head)
    ? { head, rest: sentence.slice(head.length).replace(/^[:,]\s*/, '') }
    : { head: sentence, rest: '' };
}

/** What the printed sheet says instead. */
export function sinceWords({ since, printed, sentence, step }: SheetLine, zone: string): string {
  if (since === 'NEW') return 'New since the sheet was printed.';
  if (since !== 'CHANGED' || !printed) return '';
  const parts = [
    printed.startAt === step.startAt && printed.endAt === step.endAt ? '' : spanWords(printed, zone),
    printed.sentence === sentence ? '' : `“${printed.sentence}”`,
  ];
  return `Changed: the printed sheet says ${parts.filter(Boolean).join(', ')}.`;
}

const ml = (volume: number): string => `${Math.round(volume)}\u00a0mL`;

const dayOnPaper = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${day}T12:00Z`),
  );

/** "methanol 300 mL" with its batch, and its peroxide test where it matters. */
export function solventWords({ solvent, ml: volume, formsPeroxides, batch }: Sheet['solvents'][number]): string {
  const from = batch ? `batch ${batch.batch}, opened ${dayOnPaper(batch.openedOn)}` : 'batch ________';
  const tested = batch?.peroxideTestedOn
    ? `peroxides tested ${dayOnPaper(batch.peroxideTestedOn)}`
    : 'peroxides tested ________';
  return `${solvent} ${ml(volume)} (${formsPeroxides ? `${from}, ${tested}` : from})`;
}

const streamWord: Record<Stream, string> = {
  HALOGENATED: 'halogenated waste, apart',
  NON_HALOGENATED: 'waste without halogens',
};

export const wasteWords = ({ stream, ml: volume }: Sheet['waste'][number]): string =>
  `${ml(volume)} ${streamWord[stream]}`;

/** What one load takes of each: "100 mL methanol, 100 mL chloroform". */
export const liquidsWords = (solvents: Step['solvents']): string =>
  solvents.map(({ solvent, ml: volume }) => `${ml(volume)} ${solvent}`).join(', ');
