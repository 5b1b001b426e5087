// What another room has to bring up to date before needs are planned anew: what is kept for campaigns, which their needs are given of.
import type { Work } from '../work.ts';
import type { LabFacts } from './facts.ts';

type Before = (work: Work, lab: LabFacts) => Promise<void>;

let before: Before = async () => {};

/** Set once by the room that keeps campaigns. */
export const onReplan = (act: Before): void => {
  before = act;
};

export const broughtUpBefore: Before = (work, lab) => before(work, lab);
