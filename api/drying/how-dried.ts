// How one container is dried in this lab, and what its oven may not be set above; read where it is asked.
import type { Container } from '../database/generated/sqlite/client.ts';
import type { Transaction } from '../work.ts';
import { recipesOf, refusalOf, type LabRecipe, type Own } from './recipes.ts';

type Reader = Pick<Transaction, 'recipe' | 'lot'>;

export interface HowDried {
  /** By class and by backing, the one that stands least heat first; empty where nothing is known. */
  readonly recipes: readonly LabRecipe[];
  /** The one that rules. */
  readonly recipe: LabRecipe | null;
  /** Why an oven of so many °C is refused; null when it is not, or nothing is known. */
  readonly refusal: (temperatureC: number) => string | null;
}

/** What the lab has set over the default recipes. */
export const ownRecipes = (reader: Pick<Transaction, 'recipe'>, labId: string): Promise<Own[]> =>
  reader.recipe.findMany({ where: { labId } });

/** Of a class, on a backing or loose. */
export function howClassIsDried(own: readonly Own[], sorbentClass: string, backing: Container['backing']): HowDried {
  const recipes = recipesOf(own, sorbentClass, backing);
  return { recipes, recipe: recipes[0] ?? null, refusal: (temperatureC) => refusalOf(recipes, temperatureC) };
}

/** The recipe of a container with its upper temperature, as the lab has it now. */
export async function howDried(
  reader: Reader,
  { labId, lotId, backing }: Pick<Container, 'labId' | 'lotId' | 'backing'>,
): Promise<HowDried> {
  const { sorbent } = await reader.lot.findUniqueOrThrow({ where: { id: lotId }, include: { sorbent: true } });
  return howClassIsDried(await ownRecipes(reader, labId), sorbent.sorbentClass, backing);
}
