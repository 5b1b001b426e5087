// The lab sets a recipe of its own over a default one, or takes it back. What a thing stands may only be said with a source.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { invalid, missing, unknown } from '../errors.ts';
import { said } from '../stock/service.ts';
import { recipeFor, recipes, tooHot } from '../science/tray/recipes.ts';
import { newId, write, type Work } from '../work.ts';
import { withOwn, type LabRecipe, type Own } from './recipes.ts';

const dries = z.string('a sorbent class or a backing').trim().toLowerCase().min(1, 'a sorbent class or a backing');

export const setRecipeSaid = z.object({
  dries,
  vacuum: z.boolean().nullish(),
  temperatureLowC: said.celsius.min(20, '20 °C or more').nullish(),
  temperatureHighC: said.celsius.min(20, '20 °C or more').nullish(),
  minutesLow: said.minutes.positive('more than 0 min').nullish(),
  minutesHigh: said.minutes.positive('more than 0 min').nullish(),
  depthMm: said.mm.min(1, '1 mm or more').max(100, 'at most 100 mm').nullish(),
  heatUpMinutes: said.minutes.nullish(),
  coolDownMinutes: said.minutes.nullish(),
  upperC: said.celsius.min(20, '20 °C or more').nullish(),
  upperSource: z.string().trim().max(200, 'at most 200 signs').nullish(),
  note: z.string().trim().max(500, 'at most 500 signs').nullish(),
  clientKey: said.clientKey,
});

export const resetRecipeSaid = z.object({ dries, clientKey: said.clientKey });

export type RecipeSet = { dries: string };

/** Refuses what is neither a default recipe's nor a class of a sorbent that the lab has. */
async function checkKnown({ tx, labId }: Work, what: string): Promise<void> {
  if (recipeFor(what)) return;
  const classes = (await tx.sorbent.findMany({ where: { labId }, select: { sorbentClass: true } })).map(
    ({ sorbentClass }) => sorbentClass,
  );
  if (classes.includes(what)) return;
  const known = [...new Set([...recipes.map(({ dries }) => dries), ...classes])].sort();
  throw unknown('input.dries', what, `one of: ${known.join(', ')}`);
}

/** Refuses a recipe that contradicts itself, or that is hotter than what it dries stands. */
function checkWhole(recipe: LabRecipe): void {
  const { temperatureC, minutes, upperC } = recipe;
  if (Number.isNaN(upperC)) {
    throw missing('input.upperC', `the temperature that ${recipe.name} never stands, °C, from the maker’s sheet`);
  }
  if (temperatureC.some(Number.isNaN)) throw missing('input.temperatureLowC', 'both ends of the temperature, °C');
  if (minutes.some(Number.isNaN)) throw missing('input.minutesLow', 'both ends of the time, min');
  const hot = tooHot(recipe, temperatureC[1]);
  if (hot) throw invalid('input.temperatureHighC', temperatureC[1], hot);
  if (temperatureC[0] > temperatureC[1]) {
    throw invalid('input.temperatureLowC', temperatureC[0], `at most the highest, ${temperatureC[1]} °C`);
  }
  if (minutes[0] > minutes[1]) throw invalid('input.minutesLow', minutes[0], `at most the longest, ${minutes[1]} min`);
}

type Said = z.output<typeof setRecipeSaid>;

/** What stands after an edit: what was said, else what the lab had set before. */
function edited(before: Own | null, input: Said, changedAt: Date): Own {
  return {
    dries: input.dries,
    changedAt,
    vacuum: input.vacuum ?? before?.vacuum ?? null,
    temperatureLowC: input.temperatureLowC ?? before?.temperatureLowC ?? null,
    temperatureHighC: input.temperatureHighC ?? before?.temperatureHighC ?? null,
    minutesLow: input.minutesLow ?? before?.minutesLow ?? null,
    minutesHigh: input.minutesHigh ?? before?.minutesHigh ?? null,
    depthMm: input.depthMm ?? before?.depthMm ?? null,
    heatUpMinutes: input.heatUpMinutes ?? before?.heatUpMinutes ?? null,
    coolDownMinutes: input.coolDownMinutes ?? before?.coolDownMinutes ?? null,
    upperC: input.upperC ?? before?.upperC ?? null,
    upperSource: (input.upperSource || null) ?? before?.upperSource ?? null,
    note: input.note ?? before?.note ?? null,
  };
}

/** Sets some numbers of a recipe; the others stay as they are. */
export function recipeSet(context: Context, input: Said): Promise<RecipeSet> {
  return write(context, 'setRecipe', input, async (work) => {
    const { tx, labId } = work;
    await checkKnown(work, input.dries);
    const key = { labId_dries: { labId, dries: input.dries } };
    const before = await tx.recipe.findUnique({ where: key });
    const { depthMm, upperC, upperSource } = input;
    if (typeof depthMm === 'number' && recipeFor(input.dries)?.plates) {
      throw invalid('input.depthMm', depthMm, 'none: plates lie in no tray');
    }
    if (typeof upperC === 'number' && upperC !== before?.upperC && !upperSource) {
      throw missing('input.upperSource', 'where the upper temperature is said: the maker’s sheet, with its date');
    }
    const own = edited(before, input, work.now);
    const recipe = withOwn(input.dries, own);
    if (recipe) checkWhole(recipe);
    const row = await tx.recipe.upsert({ where: key, create: { id: newId(), labId, ...own }, update: own });
    work.changed('Recipe', row.id, before ? 'CHANGED' : 'MADE');
    return { dries: input.dries };
  });
}

/** Takes back all that the lab has set of a recipe. */
export function recipeReset(context: Context, input: z.output<typeof resetRecipeSaid>): Promise<RecipeSet> {
  return write(context, 'resetRecipe', input, async (work) => {
    const { tx, labId } = work;
    await checkKnown(work, input.dries);
    const row = await tx.recipe.findUnique({ where: { labId_dries: { labId, dries: input.dries } } });
    if (row) {
      await tx.recipe.delete({ where: { id: row.id } });
      work.changed('Recipe', row.id, 'GONE');
    }
    return { dries: input.dries };
  });
}
