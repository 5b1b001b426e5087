// Campaigns, and what is kept for them, as GraphQL shows and takes them.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { NeedRef } from '../prep/refs.ts';
import { BackingEnum, fresh } from '../stock/schema.ts';
import { ContainerRef, HoldRef, LotRef, SorbentRef, there } from '../stock/refs.ts';
import { globalId } from '../stock/service.ts';
import * as campaign from './campaign.ts';
import { campaignsOf, keptBy, type KeptFor, keptOfLot, keptWords } from './campaigns.ts';
import { itemName } from './item.ts';
import { amountText, money, MoneyRef } from './money-type.ts';
import { CampaignRef } from './refs.ts';
import type { Use } from './rules.ts';
import { addCampaignSaid, keepLotSaid, setCampaignSaid, whichSaid } from './said.ts';
import { usesOf } from './uses.ts';
import { dayOf, mondayOf } from './weeks.ts';

const UseRef = builder.objectRef<Use & { isOver: boolean }>('CampaignUse').implement({
  description: 'What a campaign takes on a day.',
  fields: (t) => ({
    day: t.exposeString('day', { description: 'The day on the lab’s clock, such as 2026-12-04.' }),
    amount: t.exposeFloat('amount', { description: 'Dry sorbent, g; or plates.' }),
    isOver: t.exposeBoolean('isOver', { description: 'Its week is over: nothing is kept for it any more.' }),
  }),
});

const KeptRef = builder.objectRef<KeptFor>('KeptForCampaign').implement({
  description: 'What of a lot is kept for a campaign, and until when that lasts.',
  fields: (t) => ({
    campaign: t.field({ type: CampaignRef, description: 'The campaign.', resolve: ({ campaign }) => campaign }),
    forWhat: t.string({ description: 'Its name: “kept for …”.', resolve: ({ campaign }) => campaign.name }),
    amount: t.exposeFloat('amount', {
      description: 'Kept for it beside what its needs keep: dry sorbent, g (with what redrying will lose); or plates.',
    }),
    wanted: t.exposeFloat('wanted', {
      description: 'What its uses to come want beside its needs: dry sorbent, g; or plates.',
    }),
    lastsUntil: t.exposeString('lastsUntil', {
      nullable: true,
      description: 'The day of the last use that is covered, such as 2026-12-18: “lasts until …”; null when none is.',
    }),
    coversAll: t.exposeBoolean('coversAll', { description: 'It covers every use to come.' }),
  }),
});

builder.node(CampaignRef, {
  name: 'Campaign',
  description: 'Uses over weeks that must all be of one lot.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.campaign.load(id),
  fields: (t) => ({
    name: t.exposeString('name', { description: 'Its name, once in the lab.' }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent; of plates, that of their layer.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'Of plates, what carries the layer; null for bulk sorbent.',
      resolve: ({ backing }) => backing,
    }),
    item: t.string({
      description: 'What it uses, in words.',
      resolve: async ({ sorbentId, backing }, _, { load }) =>
        itemName(there(await load.sorbent.load(sorbentId), 'sorbent').name, backing),
    }),
    uses: t.field({
      type: [UseRef],
      description: 'What it takes, by day.',
      resolve: (of, _, { lab, now }) => {
        const monday = mondayOf(dayOf(now(), lab.timeZone));
        return usesOf(of).map((use) => ({ ...use, isOver: use.day < monday }));
      },
    }),
    total: t.float({
      description: 'All of its uses: dry sorbent, g; or plates.',
      resolve: (of) => usesOf(of).reduce((sum, { amount }) => sum + amount, 0),
    }),
    lot: t.field({
      type: LotRef,
      nullable: true,
      description: 'The lot that is kept for it; null while none is.',
      resolve: ({ lotId }, _, { load }) => (lotId ? load.lot.load(lotId) : null),
    }),
    kept: t.field({
      type: KeptRef,
      nullable: true,
      description: 'What is kept for it, and until when that lasts; null while no lot is.',
      complexity: 5,
      resolve: ({ id }, _, context) => keptBy(context, id),
    }),
    needs: t.field({
      type: [NeedRef],
      description: 'Its needs, by time; dropped ones left out.',
      complexity: 10,
      resolve: ({ id }, _, { database: { read } }) =>
        read.need.findMany({ where: { campaignId: id, droppedAt: null }, orderBy: { at: 'asc' } }),
    }),
    limitWaterFraction: t.exposeFloat('limitWaterFraction', {
      nullable: true,
      description: 'Its own upper end of water, kg per kg dry sorbent; null: the band of its sorbent or lot.',
    }),
    uncoveredCost: t.field({
      type: MoneyRef,
      nullable: true,
      description: 'What it costs when no lot covers it; null: what the lab’s rule says.',
      resolve: ({ uncoveredMinor }) => (uncoveredMinor === null ? null : money(uncoveredMinor)),
    }),
    note: t.exposeString('note', { nullable: true, description: 'What somebody noted beside it.' }),
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'When it was told.' }),
    droppedAt: t.expose('droppedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was dropped; null while it counts.',
    }),
  }),
});

builder.objectField(LotRef, 'keptFor', (t) =>
  t.field({
    type: [KeptRef],
    description: 'The campaigns that it is kept for, each with until when that lasts.',
    complexity: 2,
    resolve: ({ id }, _, context) => keptOfLot(context, id),
  }),
);

builder.interfaceField(ContainerRef, 'keptForCampaigns', (t) =>
  t.field({
    type: [KeptRef],
    description: 'The campaigns that its lot is kept for: said on every line of that lot.',
    complexity: 2,
    resolve: ({ lotId }, _, context) => keptOfLot(context, lotId),
  }),
);

builder.interfaceField(ContainerRef, 'keptWords', (t) =>
  t.stringList({
    description:
      'The same in words, for a line of a list: `kept for alkaloid series, lasts until 6 January`; empty when it is kept for none.',
    resolve: async ({ lotId, finishedAt }, _, context) => {
      if (finishedAt !== null) return [];
      const today = dayOf(context.now(), context.lab.timeZone);
      return (await keptOfLot(context, lotId)).map((kept) => keptWords(kept, today));
    },
  }),
);

builder.objectField(NeedRef, 'campaign', (t) =>
  t.field({
    type: CampaignRef,
    nullable: true,
    description: 'The campaign it belongs to; null when it stands on its own.',
    resolve: ({ campaignId }, _, { load }) => (campaignId ? load.campaign.load(campaignId) : null),
  }),
);

builder.objectField(HoldRef, 'campaign', (t) =>
  t.field({
    type: CampaignRef,
    nullable: true,
    description: 'The campaign it is kept for; null when it is for a need or for somebody.',
    resolve: ({ campaignId, needId }, _, { load }) => (campaignId && !needId ? load.campaign.load(campaignId) : null),
  }),
);

builder.objectField(HoldRef, 'campaignId', (t) =>
  t.id({
    nullable: true,
    description: 'The id of that campaign: `keptWords` of the container says until when it lasts.',
    resolve: ({ campaignId, needId }) => (campaignId && !needId ? globalId('Campaign', campaignId) : null),
  }),
);

builder.queryField('campaigns', (t) =>
  t.field({
    type: [CampaignRef],
    description: 'Campaigns, in the order they were told.',
    args: { dropped: t.arg.boolean({ description: 'Dropped ones too; not when not given.' }) },
    resolve: (_, { dropped }, context) => campaignsOf(context, dropped ?? false),
  }),
);

const CampaignKept = builder.objectRef<campaign.CampaignKept>('CampaignKept').implement({
  description: 'A campaign was added, changed, dropped or brought back, or a lot is kept for it.',
  fields: (t) => ({
    campaign: t.field({
      type: CampaignRef,
      description: 'The campaign.',
      resolve: async ({ campaignId }, _, { load }) => there(await load.campaign.load(campaignId), 'campaign'),
    }),
    notes: t.exposeStringList('notes', { description: 'What is to be known beside it, each in one sentence.' }),
  }),
});

const UseInput = builder.inputType('CampaignUseInput', {
  description: 'What a campaign takes on a day.',
  fields: (t) => ({
    day: t.string({ required: true, description: 'The day, such as 2026-12-04.' }),
    amount: t.float({ required: true, description: 'Dry sorbent, g; or whole plates.' }),
  }),
});

type T = Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0];

const campaignInput = (t: T, isNew: boolean) => {
  const stays = isNew ? '' : '; not given: stays';
  return {
    name: t.string({ required: isNew, description: `Its name, once in the lab${stays}.` }),
    uses: t.field({ type: [UseInput], required: isNew, description: `What it takes, by day${stays}.` }),
    limitWaterFraction: t.float({
      description: 'Its own upper end of water, kg per kg dry sorbent; the band of its sorbent or lot when not given.',
    }),
    uncoveredCost: t.string({
      description: `What it costs when no lot covers it, ${amountText}; the lab’s rule when not given.`,
    }),
    note: t.string({ description: 'A note beside it.' }),
  };
};

addMutation('addCampaign', {
  description: 'Adds a campaign: uses over weeks that must all be of one lot. No lot is kept yet; `keepLot` does that.',
  check: addCampaignSaid,
  success: CampaignKept,
  run: (input, context) => fresh(context, campaign.campaignAdded(context, input)),
  fields: (t) => ({
    ...campaignInput(t, true),
    sorbent: t.string({ required: true, description: 'Name of the sorbent; of plates, that of their layer.' }),
    backing: t.field({ type: BackingEnum, description: 'Of plates, what carries the layer; none for bulk sorbent.' }),
  }),
});

addMutation('setCampaign', {
  description:
    'Changes a campaign; what is kept for it follows its uses. More than is free of its lot is refused, and nothing changes.',
  check: setCampaignSaid,
  success: CampaignKept,
  run: (input, context) => fresh(context, campaign.campaignSet(context, input)),
  fields: (t) => ({
    id: t.id({ required: true, description: 'Which campaign.' }),
    ...campaignInput(t, false),
    postponeWeeks: t.int({ description: 'Moves all its uses so many weeks later, or earlier below 0.' }),
  }),
});

addMutation('dropCampaign', {
  description: 'Drops a campaign: what was kept for it is free again.',
  check: whichSaid,
  success: CampaignKept,
  run: (input, context) => fresh(context, campaign.campaignDropped(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which campaign.' }) }),
});

addMutation('restoreCampaign', {
  description: 'Brings back a dropped campaign, with its lot as far as that is still free.',
  check: whichSaid,
  success: CampaignKept,
  run: (input, context) => fresh(context, campaign.campaignRestored(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which campaign.' }) }),
});

addMutation('keepLot', {
  description:
    'Keeps a lot for a campaign: so much of it that every use to come is covered, what redrying loses included. Nobody else is promised that. More than is free is refused, a rejected lot always, one without a finished check unless `takeUnchecked` says so.',
  check: keepLotSaid,
  success: CampaignKept,
  run: (input, context) => fresh(context, campaign.lotKept(context, input)),
  fields: (t) => ({
    campaign: t.id({ required: true, description: 'Which campaign.' }),
    lotNumber: t.string({ description: 'Which lot; the oldest checked one with enough when not given.' }),
    takeUnchecked: t.boolean({ description: 'A lot whose check is not finished will do; it is marked so.' }),
  }),
});

addMutation('letLotGo', {
  description: 'Lets go of the lot that is kept for a campaign; the campaign stays.',
  check: whichSaid,
  success: CampaignKept,
  run: (input, context) => fresh(context, campaign.lotLetGo(context, input)),
  fields: (t) => ({ id: t.id({ required: true, description: 'Which campaign.' }) }),
});
