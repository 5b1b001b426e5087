// What comes next at an oven and of the prep, and what to do before going home, in a sentence or two that link on.
import type { Clock } from '../say/state.ts';
import { labClock, spokenTime } from '../say/time.ts';
import { count } from '../say/words.ts';
import type { Ahead } from './questions.ts';

export interface Said {
  words: string;
  to: string;
}

type Step = NonNullable<Ahead['nextPrepStep']>;

/** Out of the hood and handed over at the end of their time, all else at its beginning. */
const wantedAt = ({ kind, startAt, endAt }: Step): string =>
  kind === 'AIR_DRY' || kind === 'HAND_OVER' ? endAt : startAt;

const sheetOf = (at: string, evening: boolean, zone: string): string =>
  `/sheet?on=${labClock(new Date(at), zone).slice(0, 10)}${evening ? '&part=evening' : ''}`;

function prepWords(step: Step, { now, zone }: Clock): string {
  const at = new Date(wantedAt(step));
  const when = at <= now ? `since ${spokenTime(at, now, zone)}` : spokenTime(at, now, zone);
  return `${when} ${step.kind === 'AIR_DRY' ? 'out of the hood' : step.name.replace(/, load .*/, '')} for ${step.need.forWhom}`;
}

/** The next step at an oven and the next of the prep, the earlier first. */
export function nextOnes({ nextOvenStep, nextPrepStep }: Ahead, clock: Clock): Said[] {
  const oven = nextOvenStep && {
    at: nextOvenStep.at,
    words: nextOvenStep.sentence.replace(/^([^:]*\d\d:\d\d): /, '$1 '),
    to: '/ovens',
  };
  const prep = nextPrepStep && {
    at: wantedAt(nextPrepStep),
    words: prepWords(nextPrepStep, clock),
    to: sheetOf(nextPrepStep.startAt, false, clock.zone),
  };
  return [oven, prep]
    .filter((one) => one !== null)
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    .map(({ words, to }) => ({ words, to }));
}

/** What is left of this evening; nothing when the next step says it all. */
export function beforeLeaving({ beforeLeaving: steps, nextPrepStep }: Ahead, { zone }: Clock): Said | null {
  const [first, ...more] = steps;
  if (!first || (more.length === 0 && first.id === nextPrepStep?.id)) return null;
  const words = more.length === 0 ? `${first.name}, ${first.need.forWhom}` : count(steps.length, 'step');
  return { words, to: sheetOf(first.startAt, true, zone) };
}
