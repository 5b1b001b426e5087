// What may wait on the list of what to dry. Pure.
import type { Container } from '../database/generated/sqlite/client.ts';
import { invalid, missing } from '../errors.ts';
import { ovenCaution } from '../stock/effects.ts';
import { nothingGrams } from '../stock/stand.ts';
import { grams, words } from '../stock/words.ts';

export interface Wanted {
  dryGrams: number | null;
  plates: number | null;
  temperatureC: number | null;
}

/** What of a container waits already. */
export interface Waiting {
  dryGrams: number | null;
  plates: number | null;
}

const ends = 'something that may go into an oven';

/** Why an oven of a temperature is refused; null when it is not. */
type Refusal = (temperatureC: number) => string | null;

function checkMayDry(container: Container, refusal: Refusal, { temperatureC }: Wanted): void {
  const { label, kind, finishedAt, wettedAt, touchedSolventAt } = container;
  if (finishedAt) throw invalid('input.label', label, `nothing is left in it; ${ends}`);
  if (kind === 'COLUMN') throw invalid('input.label', label, `a packed column is not dried; ${ends}`);
  const caution = ovenCaution({ wettedAt, touchedSolventAt }, { kind });
  if (caution)
    throw invalid('input.label', label, `${caution}; ${kind === 'PLATE_BOX' ? 'recordSolventGone first' : ends}`);
  if (temperatureC === null) return;
  const hot = refusal(temperatureC);
  if (hot) throw invalid('input.temperatureC', temperatureC, hot);
}

/** What of one container may still be asked for; null where all of it waits already. */
function openAmount(there: number, asked: readonly (number | null)[]): number | null {
  return asked.includes(null) ? null : there - asked.reduce<number>((sum, each) => sum + (each ?? 0), 0);
}

/** Refuses what never goes to an oven, recipes that are too hot, and more than is there and does not wait yet. */
export function checkRequest(
  container: Container,
  refusal: Refusal,
  wanted: Wanted,
  waiting: readonly Waiting[],
): void {
  checkMayDry(container, refusal, wanted);
  const { label, kind } = container;
  if (kind === 'PLATE_BOX') {
    const open = openAmount(
      container.plates ?? 0,
      waiting.map(({ plates }) => plates),
    );
    if (open === null) throw invalid('input.label', label, 'all of it waits already; withdraw that first');
    if ((wanted.plates ?? open) > open || open === 0) {
      throw invalid(
        'input.plates',
        wanted.plates ?? 'all',
        `at most ${words.plates(open)} of ${label} do not wait yet`,
      );
    }
    return;
  }
  if (wanted.plates !== null) throw missing('input.dryGrams', `dry grams: ${label} holds no plates`);
  const open = openAmount(
    container.dryGrams,
    waiting.map(({ dryGrams }) => dryGrams),
  );
  if (open === null) throw invalid('input.label', label, 'all of it waits already; withdraw that first');
  if ((wanted.dryGrams ?? open) > open + nothingGrams || open <= nothingGrams) {
    throw invalid(
      'input.dryGrams',
      wanted.dryGrams ?? 'all',
      `at most ${grams(Math.max(open, 0))} (dry) of ${label} do not wait yet`,
    );
  }
}

/** The place before one of the waiting, in their order; after all when it is null. Null when there is no room between. */
export function positionBefore(
  waiting: readonly { id: string; position: number }[],
  before: string | null,
): number | null {
  const at = before === null ? waiting.length : waiting.findIndex(({ id }) => id === before);
  const lower = waiting[at - 1]?.position;
  const upper = waiting[at]?.position;
  if (upper === undefined) return (lower ?? 0) + 1;
  const middle = lower === undefined ? upper - 1 : (lower + upper) / 2;
  return lower !== undefined && (middle <= lower || middle >= upper) ? null : middle;
}
