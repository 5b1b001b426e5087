// From the lot to here and on, as a tree: sources one below another, what else came of them folded away.
import type { Kind } from '../say/words.ts';
import { kindWord } from '../say/words.ts';
import type { State } from '../say/state.ts';
import type { Relation } from './questions.ts';

export interface Kin {
  relation: Relation;
  level: number;
  container: {
    label: string;
    kind: Kind;
    finishedAt: string | null;
    vessel: { name: string } | null;
    takenFrom: { label: string } | null;
    exposure: { state: State } | null;
  };
}

export interface Branch {
  kin: Kin['container'];
  below: Branch[];
}

export interface Tree {
  /** From the first container of the lot down to the one it was taken from. */
  sources: Kin['container'][];
  siblings: Kin['container'][];
  combinedFrom: Kin['container'][];
  emptiedInto: Kin['container'][];
  /** What was taken from it, with what was taken from that. */
  taken: Branch[];
}

export function treeOf(label: string, kin: readonly Kin[]): Tree {
  const of = (relation: Relation) => kin.filter((one) => one.relation === relation).map(({ container }) => container);
  const descendants = of('DESCENDANT');
  const below = (source: string, seen: readonly string[]): Branch[] =>
    descendants
      .filter(({ takenFrom, label: own }) => takenFrom?.label === source && !seen.includes(own))
      .map((one) => ({ kin: one, below: below(one.label, [...seen, one.label]) }));
  return {
    sources: of('ANCESTOR'),
    siblings: of('SIBLING'),
    combinedFrom: of('COMBINED_FROM'),
    emptiedInto: of('EMPTIED_INTO'),
    taken: below(label, [label]),
  };
}

/** "drum", "drying tray 300 mm, used up". */
export const kinWords = ({ kind, vessel, finishedAt }: Kin['container']): string =>
  `${vessel?.name ?? kindWord[kind]}${finishedAt ? ', used up' : ''}`;
