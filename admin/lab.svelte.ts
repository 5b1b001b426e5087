// What every screen needs of the lab: its zone, its clock, and the names one chooses from.
import { actAs, ask } from './ask.ts';
import { labQuestion } from './lab-question.ts';
import type { Clock } from './say/state.ts';
import type { Answer } from './shape.ts';

type Known = Answer<typeof labQuestion.shape>;

let known = $state.raw<Known | null>(null);
let behindMs = 0;
let now = $state(new Date());

function tick(): void {
  now = new Date(Date.now() + behindMs);
}
setInterval(tick, 15_000);

/** Asks for the lab again, after something was added to it. */
export async function learnLab(): Promise<void> {
  const answer = await ask(labQuestion, {});
  behindMs = Date.parse(answer.lab.now) - Date.now();
  tick();
  known = answer;
}

export const lab = {
  get known(): Known | null {
    return known;
  },
  get zone(): string {
    return known?.lab.timeZone ?? 'UTC';
  },
  /** The server's clock, which may not be this machine's; moves on every quarter of a minute. */
  get now(): Date {
    return now;
  },
  get clock(): Clock {
    return { now, zone: this.zone };
  },
};

const ACTOR = 'drumkeep:who';
export const whoActs = (): string => localStorage.getItem(ACTOR) ?? '';
export function setWhoActs(shortName: string): void {
  localStorage.setItem(ACTOR, shortName);
  actAs(shortName);
}
actAs(whoActs());
