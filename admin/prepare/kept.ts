// Sheets kept on this machine, so that the one in the hood opens without a network: the one that is up now, the one after it,
// and whatever else was looked at and is not over.
import { ask } from '../ask.ts';
import { lab, learnLab } from '../lab.svelte.ts';
import { recall, remember } from '../later/store.ts';
import { labClock } from '../say/time.ts';
import { eveningQuestion, sheetQuestion, type Part, type Sheet } from './questions.ts';
import { dayAfter } from '../need/words.ts';
import { sheetsAhead } from './words.ts';

interface Answer {
  prepSheet: Sheet;
  lab: { name: string };
}
interface Seen {
  on: string;
  part: Part;
  answer: Answer;
  at: Date;
}

const SHEETS = 'sheets';
const recalled = async (): Promise<Seen[]> => (await recall<Seen[]>(SHEETS)) ?? [];

/** The sheet as it is now, kept for later; sheets of days before yesterday go. */
export async function sheetKept(on: string, part: Part): Promise<Answer> {
  const answer = await ask(sheetQuestion, { on, part });
  const yesterday = dayAfter(labClock(lab.now, lab.zone).slice(0, 10), -1);
  const others = (await recalled()).filter((one) => one.on >= yesterday && (one.on !== on || one.part !== part));
  void remember(SHEETS, [...others, { on, part, answer, at: lab.now } satisfies Seen]);
  return answer;
}

/** The sheet as it was last seen here; null where it never was. */
export async function sheetSeen(on: string, part: Part): Promise<Seen | null> {
  return (await recalled()).find((one) => one.on === on && one.part === part) ?? null;
}

/** Fetches them at leisure. */
export async function keepSheets(): Promise<void> {
  if (!lab.known) await learnLab();
  const { eveningFrom } = (await ask(eveningQuestion, {})).lab.prep;
  void remember('evening', eveningFrom);
  for (const { on, part } of sheetsAhead(labClock(lab.now, lab.zone), eveningFrom)) await sheetKept(on, part);
}
