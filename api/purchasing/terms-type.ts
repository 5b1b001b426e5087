// Places whose room is short, and the lab's own rules for buying, as GraphQL shows and takes them.
import { builder } from '../builder.ts';
import type { Context } from '../context.ts';
import type { StorageGroup } from '../database/generated/sqlite/client.ts';
import { addMutation } from '../mutation.ts';
import { fresh } from '../stock/schema.ts';
import { LabRef, there } from '../stock/refs.ts';
import { itemsNow } from './items.ts';
import { amountText, money, MoneyRef } from './money-type.ts';
import { StorageGroupRef } from './refs.ts';
import { addStorageSaid, setStorageSaid, whichSaid } from './said.ts';
import { purchaseSettingsOf, purchaseSettingsSaid, purchaseSettingsSet, type PurchaseSettings } from './settings.ts';
import { storageAdded, storageKept, storageSet } from './terms.ts';

/** What stands in a storage group now, litres. */
async function usedLitres(context: Context, { id }: StorageGroup): Promise<number> {
  const some = (await itemsNow(context)).filter(({ rule }) => rule.storageId === id && rule.litres !== null);
  return some.reduce((sum, { rule, stock, item }) => {
    const amount = (stock?.lots ?? []).reduce((total, lot) => total + lot.amount, 0);
    return sum + (amount / (item.backing === null ? 1000 : 100)) * (rule.litres ?? 0);
  }, 0);
}

builder.node(StorageGroupRef, {
  name: 'StorageGroup',
  description: 'A place whose room is short: a cold store, a cupboard.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.storageGroup.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the lab.' }),
    capacityL: t.exposeFloat('capacityL', { description: 'What fits, L.' }),
    usedL: t.float({
      description: 'What stands there now, by what its items take up, L.',
      complexity: 50,
      resolve: (group, _, context) => usedLitres(context, group),
    }),
    overCost: t.field({
      type: MoneyRef,
      description: 'What a litre above it costs in a week.',
      resolve: ({ overMinor }) => money(overMinor),
    }),
    removedAt: t.expose('removedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken out of use; null while it counts.',
    }),
  }),
});

const RulesRef = builder.objectRef<PurchaseSettings & { own: string[] }>('PurchaseRules').implement({
  description: 'What the lab sets for buying. What it has not set is an invented default.',
  fields: (t) => ({
    currency: t.string({ description: 'ISO 4217, such as `EUR`.', resolve: ({ currency }) => currency.code }),
    minorDigits: t.int({
      description: 'Digits behind the point: 2 for EUR, 0 for JPY.',
      resolve: ({ currency }) => currency.minorDigits,
    }),
    weeks: t.exposeInt('weeks', { description: 'How far a plan looks, weeks.' }),
    serviceLevel: t.exposeFloat('serviceLevel', {
      description: 'The share of lead times that should not run out, 0 to 1.',
    }),
    holdingPercentAYear: t.exposeFloat('holdingPercentAYear', {
      description: 'What goods cost while they stand there, % of their price a year.',
    }),
    checkWeeks: t.exposeInt('checkWeeks', { description: 'From arrival until a new lot is checked, weeks.' }),
    checkCost: t.field({
      type: MoneyRef,
      description: 'What one check costs.',
      resolve: ({ checkMinor }) => money(checkMinor),
    }),
    checkGrams: t.exposeFloat('checkGrams', { description: 'Sorbent that a check uses up, dry g.' }),
    checkPlates: t.exposeInt('checkPlates', { description: 'Plates that a check uses up.' }),
    redryLossFraction: t.exposeFloat('redryLossFraction', {
      description: 'What one drying loses on trays and scoops, a fraction of the mass.',
    }),
    shortTimesPrice: t.exposeFloat('shortTimesPrice', {
      description: 'What running out costs, in prices of what is missing.',
    }),
    own: t.exposeStringList('own', { description: 'Which of these the lab has set itself.' }),
  }),
});

builder.objectField(LabRef, 'purchasing', (t) =>
  t.field({
    type: RulesRef,
    description: 'What the lab sets for buying.',
    resolve: ({ settings }) => purchaseSettingsOf(settings),
  }),
);

builder.queryField('storageGroups', (t) =>
  t.field({
    type: [StorageGroupRef],
    description: 'Places whose room is short, by name.',
    args: { removed: t.arg.boolean({ description: 'With those taken out of use; without when not given.' }) },
    resolve: (_, { removed }, { database: { read }, lab }) =>
      read.storageGroup.findMany({
        where: { labId: lab.id, ...(removed ? {} : { removedAt: null }) },
        orderBy: { name: 'asc' },
      }),
  }),
);

const StorageKept = builder.objectRef<{ storageId: string }>('StorageKept').implement({
  description: 'A storage group was added, changed, taken out of use or brought back.',
  fields: (t) => ({
    storage: t.field({
      type: StorageGroupRef,
      description: 'The storage group.',
      resolve: async ({ storageId }, _, { load }) => there(await load.storageGroup.load(storageId), 'storage group'),
    }),
  }),
});

const overText = `What a litre above it costs in a week, ${amountText}`;

addMutation('addStorage', {
  description: 'Adds a storage group: a place whose room is short.',
  check: addStorageSaid,
  success: StorageKept,
  run: (input, context) => fresh(context, storageAdded(context, input)),
  fields: (t) => ({
    name: t.string({ required: true, description: 'Its name, once in the lab.' }),
    capacityL: t.float({ required: true, description: 'What fits, L.' }),
    overCost: t.string({ description: `${overText}; nothing when not given.` }),
  }),
});

addMutation('setStorage', {
  description: 'Changes a storage group; what is not given stays.',
  check: setStorageSaid,
  success: StorageKept,
  run: (input, context) => fresh(context, storageSet(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which storage group.' }),
    name: t.string({ description: 'Its name, once in the lab.' }),
    capacityL: t.float({ description: 'What fits, L.' }),
    overCost: t.string({ description: `${overText}; null: nothing.` }),
  }),
});

addMutation('removeStorage', {
  description: 'Takes a storage group out of use.',
  check: whichSaid,
  success: StorageKept,
  run: (input, context) => fresh(context, storageKept(context, 'removeStorage', input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which storage group.' }) }),
});

addMutation('restoreStorage', {
  description: 'Brings back a storage group that was taken out of use.',
  check: whichSaid,
  success: StorageKept,
  run: (input, context) => fresh(context, storageKept(context, 'restoreStorage', input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which storage group.' }) }),
});

const RulesKept = builder.objectRef<{ labId: string }>('PurchaseRulesKept').implement({
  description: 'What the lab sets for buying was changed.',
  fields: (t) => ({
    lab: t.field({ type: LabRef, description: 'The lab.', resolve: (_, __, { lab }) => lab }),
  }),
});

addMutation('setPurchasing', {
  description: 'Sets what the lab chooses for buying; null goes back to the default.',
  check: purchaseSettingsSaid,
  success: RulesKept,
  run: (input, context) => fresh(context, purchaseSettingsSet(context, input)),
  fields: (t) => ({
    currency: t.string({ description: 'ISO 4217, such as `EUR`; refused once there are offers in another.' }),
    weeks: t.int({ description: 'How far a plan looks, 26 to 52 weeks.' }),
    serviceLevel: t.float({ description: 'The share of lead times that should not run out, 0.5 to 0.999.' }),
    holdingPercentAYear: t.float({ description: 'What goods cost while they stand there, % of their price a year.' }),
    checkWeeks: t.int({ description: 'From arrival until a new lot is checked, weeks.' }),
    checkCost: t.string({ description: `What one check costs, ${amountText}.` }),
    checkGrams: t.float({ description: 'Sorbent that a check uses up, dry g.' }),
    checkPlates: t.int({ description: 'Plates that a check uses up.' }),
    redryLossFraction: t.float({ description: 'What one drying loses on trays and scoops, a fraction of the mass.' }),
    shortTimesPrice: t.float({ description: 'What running out costs, in prices of what is missing.' }),
    seconds: t.float({ description: 'How long a planning may take, s.' }),
  }),
});
