// Closures of the book in the words of the estimator.
import type { Closure as Stored } from '../database/generated/sqlite/client.ts';
import type { Closure, Lid } from '../science/history.ts';

const shut: Record<Exclude<Stored, 'OPEN'>, Closure> = {
  LOOSELY_COVERED: 'loosely covered',
  WELL_CLOSED: 'well closed',
  TIGHT: 'tight',
  SEALED: 'sealed',
};

export const lidOf = (stored: Stored): Lid => (stored === 'OPEN' ? 'open' : shut[stored]);

/** The closure a container usually gets; one that usually stands open is looked ahead for as well closed. */
export const usualClosureOf = (stored: Stored): Closure => (stored === 'OPEN' ? 'well closed' : shut[stored]);
