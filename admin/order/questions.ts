// What the pages of ordering ask: what is due, how far each order is, how long stock lasts, campaigns, offers, the plan.
import { question } from '../ask.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type Backing = 'GLASS' | 'ALUMINIUM' | 'PLASTIC';
export type OrderState = 'ASKED_FOR' | 'BOUGHT' | 'ON_THE_SHELF' | 'CALLED_OFF';

const order = {
  id: text,
  number: number,
  state: word<OrderState>(),
  item: text,
  amount: text,
  unit: word<'GRAMS' | 'PLATES'>(),
  packs: number,
  packsToCome: number,
  price: { amount: text, text: text },
  total: { text: text },
  supplier: { name: text },
  lotWished: maybe(text),
  theirNumber: maybe(text),
  askedAt: instant,
  expectedOn: maybe(text),
  isLate: flag,
  shelvedAt: maybe(instant),
  deliveries: many({
    at: instant,
    lotNumber: text,
    packs: number,
    damagedPacks: number,
    isOtherLot: flag,
    containers: many({ label: text }),
  }),
};
export type Order = Answer<typeof order>;

export const weekQuestion = question<Record<string, never>>('OrderWeek')({
  ordersDue: many({
    basis: word<'PLAN' | 'REORDER_POINT'>(),
    offer: { id: text, name: text, supplier: { name: text } },
    packs: number,
    amount: text,
    total: { text: text },
    orderBy: text,
    sentence: text,
  }),
  orders: given('first: 60', many(order)),
  purchasePlan: maybe({ due: many(text) }),
});
export type Due = Answer<typeof weekQuestion.shape>['ordersDue'][number];

export const listQuestion = question<Record<string, never>>('OrderList')({
  orderList: { orders: number, csv: text, text: text },
});

const offer = {
  id: text,
  name: text,
  supplier: { name: text },
  sorbent: { name: text },
  backing: maybe(word<Backing>()),
  articleNumber: maybe(text),
  packGrams: maybe(number),
  packPlates: maybe(number),
  pack: text,
  prices: many({ from: number, price: { amount: text, text: text } }),
  leadLeastWeeks: number,
  leadUsualWeeks: number,
  leadMostWeeks: number,
  shelfWeeks: maybe(number),
  quotedOn: maybe(text),
  isOldQuote: flag,
};
export type Offer = Answer<typeof offer>;

export const offersQuestion = question<Record<string, never>>('Offers')({
  offers: many(offer),
  suppliers: given('first: 200', {
    nodes: many({
      name: text,
      deliveryFee: { amount: text, text: text },
      minOrder: { minor: text, amount: text, text: text },
    }),
  }),
  lab: { purchasing: { currency: text } },
});
export type Terms = Answer<typeof offersQuestion.shape>['suppliers']['nodes'][number];

export const stockQuestion = question<Record<string, never>>('StockLasts')({
  stockItems: many({
    key: text,
    name: text,
    sorbent: { name: text },
    backing: maybe(word<Backing>()),
    unit: word<'GRAMS' | 'PLATES'>(),
    free: number,
    lastsUntil: maybe(text),
    chanceUntilNew: maybe(number),
    weekly: number,
    asksForWeekly: flag,
    reorderPoint: maybe(number),
    safetyStock: maybe(number),
    lots: many({
      lot: { lotNumber: text, keptFor: many({ forWhat: text, lastsUntil: maybe(text) }) },
      usable: number,
      free: number,
      mustRedry: number,
      lastsUntil: maybe(text),
    }),
  }),
});
export type Item = Answer<typeof stockQuestion.shape>['stockItems'][number];

export const campaignsQuestion = question<Record<string, never>>('Campaigns')({
  campaigns: many({
    id: text,
    name: text,
    item: text,
    sorbent: { name: text },
    backing: maybe(word<Backing>()),
    uses: many({ day: text, amount: number, isOver: flag }),
    total: number,
    lot: maybe({ lotNumber: text }),
    kept: maybe({ lastsUntil: maybe(text), coversAll: flag }),
    note: maybe(text),
  }),
});
export type Campaign = Answer<typeof campaignsQuestion.shape>['campaigns'][number];

export const coverageQuestion = question<{ sorbent: string; lot: string; until: string; backing: Backing | null }>(
  'WillItLast',
  '$sorbent: String!, $lot: String!, $until: String!, $backing: Backing',
)({
  coverage: given('sorbent: $sorbent, lot: $lot, until: $until, backing: $backing', {
    '... on Coverage': {
      chance: number,
      sentence: text,
      mustRedry: number,
      lostToRedrying: number,
      keptForCampaigns: number,
      free: number,
      asksForWeekly: flag,
      remedies: many({
        what: word<'OTHER_LOT' | 'BUY_NOW' | 'POSTPONE' | 'RELAX_LIMIT'>(),
        sentence: text,
        chance: number,
        offer: maybe({ id: text }),
        packs: maybe(number),
      }),
    },
    '... on Refusal': { message: text, path: text, expected: text },
  }),
});
export type Coverage = Answer<typeof coverageQuestion.shape>['coverage'];

const money = { minor: text, text: text };
const plan = {
  id: text,
  madeAt: instant,
  weeks: number,
  whatIf: maybe(text),
  words: text,
  cost: money,
  spend: money,
  lines: many({
    offer: { id: text, name: text, supplier: { name: text } },
    amount: text,
    total: money,
    orderWeek: number,
    orderBy: text,
    sentence: text,
  }),
  costs: {
    ...{ goods: money, fees: money, checks: money, withoutOld: money, holding: money, waste: money },
    ...{ shortage: money, belowSafety: money, uncovered: money, overflow: money, endValue: money },
  },
  campaigns: many({ campaign: maybe({ name: text }), lotName: maybe(text), order: maybe({ id: text }), isNew: flag }),
  warnings: many(text),
  moved: many({ sentence: text }),
  simplifications: many(text),
  reorderPoints: many({ item: text, point: number, safety: number, unit: text }),
  saves: money,
  due: many(text),
};
export type Plan = Answer<typeof plan>;
export const planFields = plan;

export const planQuestion = question<Record<string, never>>('PurchasePlan')({
  purchasePlan: maybe(plan),
  purchasePlanning: maybe({ share: number, items: number }),
});
export const planningQuestion = question<Record<string, never>>('PurchasePlanning')({
  purchasePlanning: maybe({ share: number, items: number }),
});

/** Numbers of the lots there are. */
export const lotsQuestion = question<Record<string, never>>('LotNumbers')({
  sorbents: given('first: 200', { nodes: many({ lots: many({ lotNumber: text }) }) }),
});
