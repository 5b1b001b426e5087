// How this lab dries things: its own numbers over the default recipes, and what no oven may be set above. Pure.
import type { Backing, Recipe as OwnRow } from '../database/generated/sqlite/client.ts';
import { recipeFor, recipes, tooHot, type Recipe } from '../science/tray/recipes.ts';

/** A recipe, with the names of the numbers that the lab has set itself. */
export interface LabRecipe extends Recipe {
  readonly own: readonly string[];
  readonly changedAt: Date | null;
}

const ownNames = [
  'vacuum',
  'temperatureLowC',
  'temperatureHighC',
  'minutesLow',
  'minutesHigh',
  'depthMm',
  'heatUpMinutes',
  'coolDownMinutes',
  'upperC',
  'note',
] as const;

/** What the lab may set. */
export type Own = Pick<OwnRow, 'dries' | 'changedAt' | 'upperSource' | (typeof ownNames)[number]>;

const backingOf: Record<Backing, string> = { GLASS: 'glass', ALUMINIUM: 'aluminium', PLASTIC: 'plastic' };

/** The default for a class of the lab's own, of which no table knows anything: nothing is guessed. */
const unheardOf = (dries: string): Recipe => ({
  dries,
  name: dries,
  plates: false,
  vacuum: true,
  temperatureC: [NaN, NaN],
  minutes: [NaN, NaN],
  depthMm: 10,
  heatUpMinutes: 30,
  coolDownMinutes: 30,
  upperC: NaN,
  because: 'it suffers',
  note: '',
  source: 'the lab’s own',
  upperSource: '',
});

const plain = (recipe: Recipe): LabRecipe => ({ ...recipe, own: [], changedAt: null });

/** A recipe with the lab's own numbers over the default ones. */
export function withOwn(dries: string, own: Own | undefined): LabRecipe | null {
  const usual = recipeFor(dries);
  if (!own) return usual && plain(usual);
  const under = usual ?? unheardOf(dries);
  const said = ownNames.filter((name) => own[name] !== null);
  return {
    ...under,
    vacuum: own.vacuum ?? under.vacuum,
    temperatureC: [own.temperatureLowC ?? under.temperatureC[0], own.temperatureHighC ?? under.temperatureC[1]],
    minutes: [own.minutesLow ?? under.minutes[0], own.minutesHigh ?? under.minutes[1]],
    depthMm: under.plates ? null : (own.depthMm ?? under.depthMm),
    heatUpMinutes: own.heatUpMinutes ?? under.heatUpMinutes,
    coolDownMinutes: own.coolDownMinutes ?? under.coolDownMinutes,
    upperC: own.upperC ?? under.upperC,
    upperSource: own.upperSource ?? under.upperSource,
    note: own.note ?? under.note,
    own: said,
    changedAt: own.changedAt,
  };
}

/** Every recipe of the lab: the table's in its order, then those of its own classes. */
export function allRecipes(own: readonly Own[]): LabRecipe[] {
  const known = new Set(recipes.map(({ dries }) => dries));
  const names = [
    ...known,
    ...own
      .map(({ dries }) => dries)
      .filter((dries) => !known.has(dries))
      .sort(),
  ];
  const all = names.map((dries) =>
    withOwn(
      dries,
      own.find((one) => one.dries === dries),
    ),
  );
  return all.filter((recipe) => recipe !== null);
}

/** What applies to a sorbent, on a backing or loose; of two the lower limit rules. Empty where nothing is known. */
export function recipesOf(own: readonly Own[], sorbentClass: string, backing: Backing | null): LabRecipe[] {
  const names = backing ? [backingOf[backing], sorbentClass] : [sorbentClass];
  return names
    .map((dries) =>
      withOwn(
        dries,
        own.find((one) => one.dries === dries),
      ),
    )
    .filter((recipe) => recipe !== null)
    .sort((a, b) => a.upperC - b.upperC);
}

/** Why an oven may not be so hot, by the strictest of some recipes; null when it may. */
export function refusalOf(recipes: readonly Recipe[], temperatureC: number): string | null {
  const [strictest] = recipes;
  return strictest ? tooHot(strictest, temperatureC) : null;
}
