// Lot checks, decisions and how a lot stands, as GraphQL shows them.
import { builder } from '../builder.ts';
import { checked } from '../errors.ts';
import { LotRef, SorbentRef, there } from '../stock/schema.ts';
import { PersonRef } from '../stock/refs.ts';
import { z } from 'zod';
import { lotChecksOf } from './check-list.ts';
import { checkRead } from './compared.ts';
import { LotOutcomeEnum, RetentionEnum } from './estimate-type.ts';
import { LotCheckRef, LotDecisionRef, RetentionRunRef } from './refs.ts';
import { spreadApart } from './spread-apart.ts';
import { decisionOn, standingOf } from './standing.ts';
import { CheckVerdictRef, SpreadRef } from './verdict-type.ts';
import { standingWords } from './words.ts';

builder.node(LotDecisionRef, {
  name: 'LotDecision',
  description: 'What a person decided of a lot.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { database, lab }) => database.read.lotDecision.findFirst({ where: { id, labId: lab.id } }),
  fields: (t) => ({
    outcome: t.field({ type: LotOutcomeEnum, description: 'What.', resolve: ({ outcome }) => outcome }),
    why: t.exposeString('why', { description: 'Why.' }),
    at: t.expose('at', { type: 'DateTime', description: 'When.' }),
    by: t.field({
      type: PersonRef,
      nullable: true,
      description: 'Who; null where nobody said.',
      resolve: ({ actorId }, _, { load }) => (actorId ? load.person.load(actorId) : null),
    }),
    lot: t.field({
      type: LotRef,
      description: 'Of which lot.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
    takenBackAt: t.expose('takenBackAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back; null while it counts.',
    }),
  }),
});

builder.node(LotCheckRef, {
  name: 'LotCheck',
  description: 'A new lot compared with the last one, on plates or columns of both.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { database, lab }) => database.read.lotCheck.findFirst({ where: { id, labId: lab.id } }),
  fields: (t) => ({
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent or plate kind.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    oldLot: t.field({
      type: LotRef,
      description: 'The lot that is known.',
      resolve: async ({ oldLotId }, _, { load }) => there(await load.lot.load(oldLotId), 'lot'),
    }),
    newLot: t.field({
      type: LotRef,
      description: 'The lot that is checked.',
      resolve: async ({ newLotId }, _, { load }) => there(await load.lot.load(newLotId), 'lot'),
    }),
    retention: t.field({
      type: RetentionEnum,
      description: 'What its values are.',
      resolve: ({ retention }) => retention,
    }),
    madeAt: t.expose('madeAt', { type: 'DateTime', description: 'When it was begun.' }),
    note: t.exposeString('note', { nullable: true, description: 'A note.' }),
    takenBackAt: t.expose('takenBackAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was taken back; null while it counts.',
    }),
    runs: t.field({
      type: [RetentionRunRef],
      description: 'Its plates or columns, by time.',
      complexity: { field: 5, multiplier: 20 },
      resolve: async (check, _, context) => [...(await checkRead(context, check)).rows],
    }),
    verdict: t.field({
      type: CheckVerdictRef,
      description: 'What they say.',
      complexity: 10,
      resolve: (check, _, context) => checkRead(context, check),
    }),
    spread: t.field({
      type: [SpreadRef],
      description: 'Where the spread comes from, compound by compound.',
      complexity: { field: 50, multiplier: 4 },
      resolve: async (check, _, context) => spreadApart((await checkRead(context, check)).runs),
    }),
    decision: t.field({
      type: LotDecisionRef,
      nullable: true,
      description: 'What a person decided of the new lot since it was begun; null while nobody has.',
      resolve: (check, _, context) => decisionOn(context, check),
    }),
  }),
});

const StandingEnum = builder.enumType('LotStanding', {
  description: 'How a lot stands.',
  values: {
    ACCEPTED: { description: 'A person accepted it.' },
    REJECTED: { description: 'A person rejected it: it is never offered for a need.' },
    IN_CHECK: { description: 'Its check is not decided yet.' },
    UNCHECKED: { description: 'Nobody has checked it against the last lot: it is offered with a mark.' },
    FIRST: { description: 'The first lot of its sorbent, with none before it to compare with.' },
  },
});

builder.objectFields(LotRef, (t) => ({
  standing: t.field({
    type: StandingEnum,
    description: 'How it stands: accepted, rejected, in check, unchecked, or the first.',
    resolve: async ({ id }, _, context) => (await standingOf(context, id)).standing,
  }),
  standingWords: t.string({
    description: 'How it stands, in words.',
    resolve: async ({ id }, _, context) => {
      const { standing, decision } = await standingOf(context, id);
      return standingWords(standing, decision?.why ?? null);
    },
  }),
  decisions: t.field({
    type: [LotDecisionRef],
    description: 'All that was decided of it, the newest first, also what was taken back.',
    complexity: { field: 2, multiplier: 3 },
    resolve: ({ id }, _, { database }) =>
      database.read.lotDecision.findMany({ where: { lotId: id }, orderBy: [{ at: 'desc' }, { id: 'desc' }] }),
  }),
}));

const listSaid = z.object({
  sorbent: z.string().nullish(),
  isOpen: z.boolean().nullish(),
  first: z.int('a whole number').min(0, '0 or more').max(200, 'at most 200').nullish(),
});

builder.queryFields((t) => ({
  lotChecks: t.field({
    type: [LotCheckRef],
    description: 'Lot checks, the newest first.',
    complexity: { field: 5, multiplier: 20 },
    args: {
      sorbent: t.arg.string({ description: 'Only of this sorbent; all when not given.' }),
      isOpen: t.arg.boolean({
        description: 'Only those on whose new lot nobody has decided since, or only the others.',
      }),
      first: t.arg.int({ description: 'How many at most; 50 when not given.' }),
    },
    resolve: (_, args, context) => lotChecksOf(context, checked(listSaid, args, 'lotChecks')),
  }),
}));
