// A check's runs become a verdict for each compound and each two of them, one for the lot, and where the spread comes from.
// Plain data in, plain data out; the plate counts as one, however many spots it carries.
import { quantitiesOf, type CheckedPlate } from '../science/lots/quantities.ts';
import { spreadOf, type Source, type Spot } from '../science/lots/spread.ts';
import { lotOutcome, verdictOf, type Outcome, type Verdict } from '../science/lots/verdict.ts';
import { byCompound, namesIn, spotsOfCompound, type SpotRead } from './spots.ts';

export interface RunRead {
  readonly id: string;
  readonly isNew: boolean;
  readonly tank: string | null;
  /** The day on the lab's clock. */
  readonly day: string;
  readonly box: string | null;
  readonly ranBy: string | null;
  readonly lot: string;
  readonly spots: readonly SpotRead[];
}

export interface Compared extends Verdict {
  readonly compounds: readonly string[];
  /** What each plate says of it. */
  readonly values: readonly { readonly runId: string; readonly isNew: boolean; readonly value: number }[];
}

export interface Comparison {
  readonly outcome: Outcome;
  readonly quantities: readonly Compared[];
  /** Further plates of each lot for every quantity to be decided with a chance of 80 %; null when none would do, or nothing can be said. */
  readonly more: number | null;
  readonly moreIfSame: number | null;
  /** Something is known to reckon the further plates with. */
  readonly canSayMore: boolean;
}

/** Plates share what a tank had on a day; without a tank's name, the day. */
const tankOf = ({ tank, day }: RunRead): string => JSON.stringify([tank, day]);

export function comparisonOf(
  runs: readonly RunRead[],
  { margin, readingStep }: { margin: number; readingStep: number },
): Comparison {
  const nameOf = namesIn(runs.flatMap(({ spots }) => spots));
  const plates = runs.map((run): CheckedPlate & { run: RunRead } => ({
    lot: run.isNew ? 'new' : 'old',
    tank: tankOf(run),
    spots: byCompound(run.spots, nameOf),
    run,
  }));
  const quantities = quantitiesOf(plates).map(({ compounds, plates: values }): Compared => {
    const ran = plates.filter(({ spots }) => compounds.every((name) => (spots[name] ?? []).length > 0));
    return {
      ...verdictOf(values, { margin, readingStep }),
      compounds,
      values: values.map(({ value }, i) => ({
        runId: ran[i]?.run.id ?? '',
        isNew: ran[i]?.run.isNew ?? false,
        value,
      })),
    };
  });
  const open = quantities.filter(({ outcome }) => outcome === 'too few');
  const most = (of: readonly (number | null)[]): number | null =>
    of.length === 0 || of.includes(null) ? null : Math.max(...of.map((count) => count ?? 0));
  return {
    outcome: lotOutcome(quantities),
    quantities,
    more: most(open.map(({ more }) => more)),
    moreIfSame: most(open.map(({ moreIfSame }) => moreIfSame)),
    canSayMore: open.length > 0 && open.every(({ difference }) => difference !== null),
  };
}

export interface CompoundSpread {
  readonly compound: string;
  readonly mean: number;
  readonly plates: number;
  readonly sources: readonly Source[];
}

/** The spots of a compound, each with what it may differ by. */
export interface SpreadInput {
  readonly compound: string;
  readonly spots: readonly Spot[];
}

/** The newest plates say where spread comes from; the likelihood of more takes seconds. */
const mostForSpread = 60;

export function spreadInput(read: readonly RunRead[]): SpreadInput[] {
  const runs = read.slice(-mostForSpread);
  const all = runs.flatMap(({ spots }) => spots);
  const nameOf = namesIn(all);
  const compounds = [...new Set(all.map(({ compound }) => nameOf(compound)))];
  return compounds.map((compound) => ({
    compound,
    spots: runs.flatMap((run) =>
      spotsOfCompound(run.spots, compound).map(({ value }) => ({
        value,
        of: { user: run.ranBy ?? '', lot: run.lot, box: `${run.lot} ${run.box ?? ''}`, plate: run.id },
      })),
    ),
  }));
}

/** Of each compound: how much its values differ between users, lots, boxes, plates, and within a plate. */
export const spreadsOf = (input: readonly SpreadInput[]): CompoundSpread[] =>
  input.flatMap(({ compound, spots }) => {
    const spread = spreadOf(spots, ['user', 'lot', 'box', 'plate']);
    return spread ? [{ compound, ...spread }] : [];
  });
