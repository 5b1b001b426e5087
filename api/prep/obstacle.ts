// What stands in the way of a need, in words, with the first time at which it could be.
import { z } from 'zod';
import type { Lack } from '../science/prep/choose.ts';
import type { Obstacle as Missed } from '../science/prep/plan.ts';
import { grams, words } from '../stock/service.ts';
import type { NeedFacts } from './facts.ts';
import { amountOf } from './facts.ts';
import { instantOf, saidTime } from './hours.ts';

export const obstacle = z.object({
  /** stock, tank, hood, hands, oven, time, solvent */
  what: z.string(),
  sentence: z.string(),
});
export type Obstacle = z.infer<typeof obstacle>;

export const obstacleIn = (stored: unknown): Obstacle | null => obstacle.safeParse(stored).data ?? null;

const doing: Record<Missed['stage'], string> = {
  WASH: 'the pre-wash and the night in the hood',
  OVEN: 'the oven and cooling',
  EQUILIBRATE: 'equilibrating',
  PACK: 'packing',
  CONDITION: 'conditioning',
  HAND_OVER: 'the steps before it',
};

const lacking: Record<Exclude<Missed['lacks'], 'time'>, string> = {
  tank: 'every tank is taken',
  hood: 'the hood has no places left',
  hands: 'everybody’s hands are full',
  oven: 'no oven is free that fits',
};

/** What is there at most, for what never fits. */
export interface AtMost {
  readonly hoodPlaces: number;
  readonly isPlates: boolean;
  readonly amount: number;
}

/** Of what cannot be at any time within four weeks: what would have to change. */
function neverWords({ stage, lacks }: Missed, { hoodPlaces, isPlates, amount }: AtMost): Obstacle {
  const many = isPlates ? words.plates(Math.ceil(amount)) : `${grams(amount)} (dry)`;
  if (stage === 'WASH' && isPlates && amount > hoodPlaces) {
    return {
      what: 'hood',
      sentence: `${many} never fit: the hood holds ${hoodPlaces} at once, and all dry there together; ask for them in parts, or set more places`,
    };
  }
  if (lacks === 'oven') {
    return {
      what: 'oven',
      sentence: `no oven of the lab takes ${many} at any time within four weeks: too small, not hot enough, out of order or taken`,
    };
  }
  if (lacks === 'time') {
    return { what: 'time', sentence: `within four weeks no working hours are long enough for ${doing[stage]}` };
  }
  return { what: lacks, sentence: `${lacking[lacks]} for four weeks, for ${doing[stage]}` };
}

/** Of planning: which resource, or that there is no time; where it can never be, what would have to change. */
export function missedWords(missed: Missed, timeZone: string, never: AtMost | null = null): Obstacle {
  if (never) return neverWords(missed, never);
  const { stage, lacks, shouldHaveBegun } = missed;
  if (lacks !== 'time') return { what: lacks, sentence: `${lacking[lacks]} in time for ${doing[stage]}` };
  const begun =
    shouldHaveBegun === null ? '' : `: it would have had to begin by ${saidTime(instantOf(shouldHaveBegun), timeZone)}`;
  return { what: 'time', sentence: `there is no time left for ${doing[stage]}${begun}` };
}

/** Of the stock: not there, not enough, too wet, past its retest date. */
export function lackWords(
  facts: NeedFacts,
  { free, usable, why }: { free: number; usable: number; why: Lack },
): Obstacle {
  const { need, sorbentName, how } = facts;
  const isPlates = need.kind === 'PLATES';
  const said = (amount: number): string => (isPlates ? words.plates(Math.floor(amount)) : `${grams(amount)} (dry)`);
  const of = need.isLotWished ? `this lot of ${sorbentName}` : sorbentName;
  const wanted = said(amountOf(facts));
  const sentence: Record<Lack, string> = {
    none: `no ${isPlates ? 'plates' : 'sorbent'} of ${of} are free: all is gone or kept for somebody`,
    notEnough: `${wanted} are needed, ${said(usable)} of one lot of ${sorbentName} are free and can be made ready (${said(free)} in all)`,
    tooWet: how.recipe
      ? `${said(free)} of ${of} are there, but may not go to the oven`
      : `${said(free)} of ${of} are there, but too wet, and no recipe is known by which to dry it: add one, or weigh it`,
    retest: `all of ${of} is past its retest date; name the lot to take it all the same`,
    rejected: `${need.isLotWished ? of : `all that is left of ${of}`} was rejected in its check`,
  };
  return {
    what: 'stock',
    sentence: isPlates
      ? sentence[why]
      : sentence[why].replace('sorbent of ', '').replace(/^no (.*) are free/, 'nothing of $1 is free'),
  };
}
