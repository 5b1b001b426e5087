// Sheets kept on this machine, so that the one in the hood opens without a network: the one that is up now and the one after it.
import { ask } from '../ask.ts';
import { lab } from '../lab.svelte.ts';
import { recall, remember } from '../later/store.ts';
import { labClock } from '../say/time.ts';
import { eveningQuestion, sheetQuestion, type Part, type Sheet } from './questions.ts';
import { sheetsAhead } from './words.ts';

interface Answer {
  prepSheet: Sheet;
  lab: { name: string };
}
interface Seen {
  key: string;
  answer: Answer;
  at: Date;
}

const keyOf = (on: string, part: Part): string => `sheet ${on} ${part}`;
/** A morning and an evening are kept side by side. */
const placeOf = (part: Part): string => `sheet ${part}`;

/** The sheet as it is now, kept for later. */
export async function sheetKept(on: string, part: Part): Promise<Answer> {
  const answer = await ask(sheetQuestion, { on, part });
  const seen: Seen = { key: keyOf(on, part), answer, at: lab.now };
  void remember(placeOf(part), seen);
  return answer;
}

/** The sheet as it was last seen here; null where another one was. */
export async function sheetSeen(on: string, part: Part): Promise<Seen | null> {
  const seen = await recall<Seen>(placeOf(part));
  return seen?.key === keyOf(on, part) ? seen : null;
}

/** Fetches them at leisure. */
export async function keepSheets(): Promise<void> {
  if (!lab.known) return;
  const { eveningFrom } = (await ask(eveningQuestion, {})).lab.prep;
  void remember('evening', eveningFrom);
  for (const { on, part } of sheetsAhead(labClock(lab.now, lab.zone), eveningFrom)) await sheetKept(on, part);
}
