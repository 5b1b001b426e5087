// What GraphQL knows of recipes: the lab's numbers over the default ones, and the upper temperatures.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import { addMutation } from '../mutation.ts';
import { ContainerRef, SorbentRef, there } from '../stock/schema.ts';
import { howClassIsDried, ownRecipes } from './how-dried.ts';
import { recipeReset, recipeSet, resetRecipeSaid, setRecipeSaid, type RecipeSet } from './lab-recipes.ts';
import { allRecipes, withOwn, type LabRecipe } from './recipes.ts';

export const RecipeRef = builder.objectRef<LabRecipe>('DryingRecipe').implement({
  description:
    'How something is dried, and what it never stands. Common practice until the lab sets its own; the maker’s sheet comes first.',
  fields: (t) => ({
    of: t.string({ description: 'What is dried so.', resolve: ({ name }) => name }),
    dries: t.exposeString('dries', {
      description: 'Its key: a sorbent class, or the backing of plates (glass, aluminium, plastic).',
    }),
    plates: t.exposeBoolean('plates', { description: 'It is about plates.' }),
    vacuum: t.exposeBoolean('vacuum', { description: 'In a vacuum oven.' }),
    temperatureLowC: t.float({
      description: 'From this temperature, °C.',
      resolve: ({ temperatureC }) => temperatureC[0],
    }),
    temperatureHighC: t.float({
      description: 'To this temperature, °C.',
      resolve: ({ temperatureC }) => temperatureC[1],
    }),
    minutesLow: t.float({ description: 'At least so long at temperature, min.', resolve: ({ minutes }) => minutes[0] }),
    minutesHigh: t.float({ description: 'At most so long, min.', resolve: ({ minutes }) => minutes[1] }),
    depthMm: t.exposeFloat('depthMm', { nullable: true, description: 'Deepest tray, mm; null for plates.' }),
    heatUpMinutes: t.exposeFloat('heatUpMinutes', {
      description: 'Until the load is hot, before the minutes at temperature, min.',
    }),
    coolDownMinutes: t.exposeFloat('coolDownMinutes', { description: 'Until it is cool in a desiccator, min.' }),
    limitC: t.float({
      description: 'Never above, °C: hotter recipes, requests and dryings are refused.',
      resolve: ({ upperC }) => upperC,
    }),
    because: t.exposeString('because', { description: 'What happens above the limit.' }),
    limitSource: t.exposeString('upperSource', { description: 'Where the limit comes from.' }),
    note: t.exposeString('note', { description: 'What else to mind; empty for nothing.' }),
    source: t.string({
      description: 'Where the numbers come from.',
      resolve: ({ source, upperSource, note }) =>
        [source, `limit ${upperSource}`, note].filter((part) => part !== '').join('; '),
    }),
    own: t.field({
      type: ['String'],
      description: 'Names of the numbers that the lab has set itself, as `setRecipe` takes them.',
      resolve: ({ own }) => [...own],
    }),
    changedAt: t.expose('changedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When the lab last changed it; null for the default.',
    }),
  }),
});

const ownOf = ({ database, lab }: Context) => ownRecipes(database.read, lab.id);

builder.interfaceField(ContainerRef, 'dryingRecipes', (t) =>
  t.field({
    type: [RecipeRef],
    description: 'How it is dried, the strictest limit first; empty where nothing is known.',
    resolve: async ({ lotId, backing }, _, context) => {
      const lot = there(await context.load.lot.load(lotId), 'lot');
      const sorbent = there(await context.load.sorbent.load(lot.sorbentId), 'sorbent');
      return [
        ...howClassIsDried(await context.load.recipes.load(context.lab.id), sorbent.sorbentClass, backing).recipes,
      ];
    },
  }),
);

builder.objectField(SorbentRef, 'dryingRecipes', (t) =>
  t.field({
    type: [RecipeRef],
    description: 'How it is dried when loose; empty where nothing is known.',
    resolve: async ({ sorbentClass }, _, { load, lab }) => [
      ...howClassIsDried(await load.recipes.load(lab.id), sorbentClass, null).recipes,
    ],
  }),
);

builder.queryField('recipes', (t) =>
  t.field({
    type: [RecipeRef],
    description: 'How the lab dries each class and each backing of plates.',
    resolve: async (_, __, context) => allRecipes(await ownOf(context)),
  }),
);

async function recipeAfter(context: Context, { dries }: RecipeSet): Promise<LabRecipe> {
  const own = (await ownOf(context)).find((one) => one.dries === dries);
  return there(withOwn(dries, own), 'recipe');
}

addMutation('setRecipe', {
  description:
    'Sets numbers of a recipe; what is not given stays as it is. A temperature above what the material stands is refused; the upper temperature itself may be set only with its source.',
  check: setRecipeSaid,
  success: RecipeRef,
  run: async (input, context) => recipeAfter(context, await recipeSet(context, input)),
  fields: (t) => ({
    dries: t.string({
      required: true,
      description: 'A sorbent class, or the backing of plates: glass, aluminium, plastic.',
    }),
    vacuum: t.boolean({ description: 'In a vacuum oven, or else in one full of air.' }),
    temperatureLowC: t.float({ description: 'From this temperature, °C.' }),
    temperatureHighC: t.float({ description: 'To this temperature, °C.' }),
    minutesLow: t.float({ description: 'At least so long at temperature, min.' }),
    minutesHigh: t.float({ description: 'At most so long, min.' }),
    depthMm: t.float({ description: 'Deepest tray, mm; none for plates.' }),
    heatUpMinutes: t.float({ description: 'Until the load is hot, min.' }),
    coolDownMinutes: t.float({ description: 'Until it is cool in a desiccator, min.' }),
    upperC: t.float({ description: 'Never above, °C.' }),
    upperSource: t.string({ description: 'Where that is said: the maker’s sheet, with its date.' }),
    note: t.string({ description: 'What else to mind.' }),
  }),
});

addMutation('resetRecipe', {
  description: 'Takes back all that the lab has set of a recipe: the default counts again.',
  check: resetRecipeSaid,
  success: RecipeRef,
  run: async (input, context) => recipeAfter(context, await recipeReset(context, input)),
  fields: (t) => ({
    dries: t.string({ required: true, description: 'A sorbent class, or the backing of plates.' }),
  }),
});
