// What every screen needs of the lab: its zone, its clock, and the names one chooses from.
import { actAs, ask } from './ask.ts';
import { labQuestion } from './lab-question.ts';
import { recall, remember } from './later/store.ts';
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

/** The server's clock at this very moment, as far as this machine knows it. */
export const momentNow = (): Date => new Date(Date.now() + behindMs);

/** Asks for the lab again, after something was added to it. */
export async function learnLab(): Promise<void> {
  try {
    const answer = await ask(labQuestion, {});
    behindMs = Date.parse(answer.lab.now) - Date.now();
    known = answer;
    void remember('lab', { known: answer, behindMs });
  } catch (error) {
    if (!known) await takeUpLab();
    throw error;
  } finally {
    tick();
  }
}

/** The lab as this machine knew it last, for when nobody answers. */
async function takeUpLab(): Promise<void> {
  const kept = await recall<{ known: Known; behindMs: number }>('lab');
  if (kept && !known) ({ known, behindMs } = kept);
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
