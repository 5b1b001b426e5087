// What checks and charts say, as sentences. Pure.
import type { Outcome } from '../science/lots/verdict.ts';
import type { Retention } from './said.ts';
import type { Compared, Comparison } from './rules.ts';
import type { Standing } from './standing.ts';

/** An Rf to two digits, a margin or difference to three; a column's values to two. */
export const figure = (value: number, digits = 2): string => {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text.replace('-', '−');
};

export const unitOf: Record<Retention, string> = {
  RF: 'Rf',
  RETENTION_FACTOR: 'k',
  COLUMN_VOLUMES: 'column volumes',
};

const pieces = (retention: Retention, count: number): string => {
  const one = retention === 'RF' ? 'plate' : 'column';
  return `${count} more ${one}${count === 1 ? '' : 's'}`;
};

/** `Sudan red`, or `Sudan red against Sudan yellow`. */
export const quantityWords = (compounds: readonly string[]): string => compounds.join(' against ');

export interface Named {
  readonly oldLot: string;
  readonly newLot: string;
  readonly retention: Retention;
  readonly margin: number;
}

/** One quantity: how far apart, surely between what, and what follows. */
export function comparedWords(one: Compared, { retention, margin }: Named): string {
  const name = quantityWords(one.compounds);
  const counts = `${one.plates.old} old, ${one.plates.new} new`;
  if (one.difference === null || one.low === null || one.high === null) {
    return `${name}: no two plates of both lots shared a tank and day (${counts}).`.replace(
      'plates',
      retention === 'RF' ? 'plates' : 'columns',
    );
  }
  const signed = (value: number): string => `${value > 0 ? '+' : ''}${figure(value, 3)}`;
  const range = `${signed(one.difference)} ${unitOf[retention]} (90 %: ${signed(one.low)} to ${signed(one.high)}; ${counts})`;
  const verdict: Record<Outcome, string> = {
    accepted: `surely within ±${margin}`,
    rejected: `surely more than ${margin} apart`,
    'too few': `too few to tell whether it lies within ±${margin}`,
  };
  return `${name}: ${range}, ${verdict[one.outcome]}.`;
}

/** The check in one sentence, or two. */
export function verdictWords(comparison: Comparison, named: Named): string {
  const { oldLot, newLot, retention, margin } = named;
  const { outcome, quantities } = comparison;
  if (quantities.length === 0) return `Nothing was run yet of ${newLot} and ${oldLot}.`;
  const within = `±${margin} ${unitOf[retention]}`;
  if (outcome === 'accepted') return `${newLot} behaves like ${oldLot}: every difference lies surely within ${within}.`;
  if (outcome === 'rejected') {
    const off = quantities.filter((one) => one.outcome === 'rejected').map(({ compounds }) => quantityWords(compounds));
    return `${newLot} does not behave like ${oldLot}: ${listed(off)} ${off.length === 1 ? 'lies' : 'lie'} surely more than ${margin} ${unitOf[retention]} apart.`;
  }
  return `Too few for a verdict. ${moreWords(comparison, named)}`;
}

function moreWords({ more, moreIfSame, canSayMore }: Comparison, { retention }: Named): string {
  if (!canSayMore) {
    const what = retention === 'RF' ? 'plates' : 'columns';
    return `Run ${what} of both lots in one tank on one day, three of each at least.`;
  }
  const same = moreIfSame === null ? '' : `${pieces(retention, moreIfSame)} of each`;
  if (more === null && moreIfSame === null) return 'The values scatter too much: no number of plates would do.';
  if (more === null)
    return `The lots look about the margin apart, where no number decides; ${same} would if they are the same, with a chance of 80 %.`;
  const apart = `${pieces(retention, more)} of each lot decide with a chance of 80 % if they are as far apart as they look`;
  return `About ${apart}${same && more !== moreIfSame ? `; ${moreIfSame} if they are the same` : ''}.`;
}

export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

/** How a lot stands, for a mark beside it. */
export function standingWords(standing: Standing, why: string | null): string {
  const said: Record<Standing, string> = {
    ACCEPTED: `checked and accepted${why ? `: ${why}` : ''}`,
    REJECTED: `rejected${why ? `: ${why}` : ''}`,
    IN_CHECK: 'its check is not decided yet',
    UNCHECKED: 'not checked against the last lot',
    FIRST: 'the first lot, with none before it to compare',
  };
  return said[standing];
}
