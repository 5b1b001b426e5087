// Whether a lot will last, as GraphQL shows it.
import { builder } from '../builder.ts';
import { checked, Refused } from '../errors.ts';
import { BackingEnum } from '../stock/schema.ts';
import { LotRef } from '../stock/refs.ts';
import { coverageOf, type Coverage } from './coverage.ts';
import { CampaignRef, OfferRef } from './refs.ts';
import type { Remedy } from './remedies.ts';
import { coverageSaid } from './said.ts';

const RemedyEnum = builder.enumType('CoverageRemedyKind', {
  description: 'What would make a lot last.',
  values: {
    OTHER_LOT: { description: 'Everyday use from another lot that is there.' },
    BUY_NOW: { description: 'Another lot bought now.' },
    POSTPONE: { description: 'A campaign later, or on another lot.' },
    RELAX_LIMIT: { description: 'A wider limit of water: what is open is used as it is.' },
  },
});

const RemedyRef = builder.objectRef<Remedy>('CoverageRemedy').implement({
  description: 'Something that would make a lot last longer, with the chance that it lasts then.',
  fields: (t) => ({
    what: t.field({ type: RemedyEnum, description: 'What it is.', resolve: ({ what }) => what }),
    sentence: t.exposeString('sentence', { description: 'In one sentence.' }),
    chance: t.exposeFloat('chance', { description: 'The chance that it lasts then, 0 to 1.' }),
    offer: t.field({
      type: OfferRef,
      nullable: true,
      description: 'The offer to buy of; null for what buys nothing.',
      resolve: ({ offer }) => offer,
    }),
    packs: t.exposeInt('packs', { nullable: true, description: 'How many packs of it.' }),
    campaign: t.field({
      type: CampaignRef,
      nullable: true,
      description: 'The campaign to postpone; null for what postpones none.',
      resolve: ({ campaign }) => campaign,
    }),
    limitWaterFraction: t.exposeFloat('limitWaterFraction', {
      nullable: true,
      description: 'The wider limit, kg water per kg dry sorbent; null where none is widened.',
    }),
  }),
});

const amounts = 'dry sorbent, g; or plates';

const CoverageRef = builder.objectRef<Coverage>('Coverage').implement({
  description:
    'Whether a lot will last: a chance, not yes or no. Grams are dry; what was poured or taken from a drum before counts as used.',
  fields: (t) => ({
    lot: t.field({ type: LotRef, description: 'The lot.', resolve: ({ lot }) => lot }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'Of plates, what carries the layer; null for bulk sorbent.',
      resolve: ({ backing }) => backing,
    }),
    until: t.exposeString('until', { description: 'The day that was asked about.' }),
    chance: t.exposeFloat('chance', {
      description:
        'The chance, 0 to 1, that all that is kept of it and all other use until then can be met; older lots are used first.',
    }),
    likelyUntil: t.exposeString('likelyUntil', {
      nullable: true,
      description: 'The day it lasts until with an even chance; null when that is more than two years off.',
    }),
    surelyUntil: t.exposeString('surelyUntil', {
      nullable: true,
      description: 'The day it lasts until with the lab’s service level; null when that is more than two years off.',
    }),
    amount: t.exposeFloat('amount', { description: `All of it on the shelf, ${amounts}.` }),
    opened: t.exposeFloat('opened', { description: `Of that, in containers that were opened, ${amounts}.` }),
    mustRedry: t.exposeFloat('mustRedry', { description: `Of that, to be redried first, ${amounts}.` }),
    lostToRedrying: t.exposeFloat('lostToRedrying', { description: `What redrying will lose, ${amounts}.` }),
    unusable: t.exposeFloat('unusable', {
      description: `What cannot be used at all: it touched solvent, or is too wet and cannot be dried; ${amounts}.`,
    }),
    usable: t.exposeFloat('usable', { description: `What can be used, ${amounts}.` }),
    keptForCampaigns: t.exposeFloat('keptForCampaigns', { description: `Kept for campaigns, ${amounts}.` }),
    keptForOthers: t.exposeFloat('keptForOthers', { description: `Kept for needs and people, ${amounts}.` }),
    free: t.exposeFloat('free', { description: `Usable and kept for nobody, ${amounts}.` }),
    older: t.exposeFloat('older', { description: `Free of older lots, which are used first, ${amounts}.` }),
    weekly: t.exposeFloat('weekly', { description: `Use expected of a week that is not booked, ${amounts}.` }),
    asksForWeekly: t.exposeBoolean('asksForWeekly', {
      description: 'There is too little history, and nobody said what a week uses: the chance is a guess.',
    }),
    remedies: t.field({
      type: [RemedyRef],
      description: 'What would make it last, the most helpful first; none where it lasts surely enough.',
      resolve: ({ remedies }) => [...remedies],
    }),
    sentence: t.exposeString('sentence', { description: 'The answer in one sentence.' }),
  }),
});

builder.queryField('coverage', (t) =>
  t.field({
    type: CoverageRef,
    description: 'Will a lot last until a day? A chance, with what it rests on and what would make it last.',
    complexity: 200,
    args: {
      sorbent: t.arg.string({ required: true, description: 'Name of the sorbent; of plates, that of their layer.' }),
      lot: t.arg.string({ required: true, description: 'The lot number.' }),
      until: t.arg.string({ required: true, description: 'Until the end of this day, such as 2027-02-26.' }),
      backing: t.arg({ type: BackingEnum, description: 'Plates on this backing, where there are several.' }),
    },
    errors: {
      types: [Refused],
      union: { name: 'CoverageResult', description: 'The answer, or what is wrong with the question.' },
    },
    resolve: (_, { sorbent, lot: lotNumber, until, backing }, context) =>
      coverageOf(context, checked(coverageSaid, { sorbent, lotNumber, until, backing }, 'coverage')),
  }),
);
