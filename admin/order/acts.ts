// What the pages of ordering tell the API.
import { act } from '../act/told.ts';
import { flag, instant, many, maybe, number, text, word } from '../shape.ts';
import { planFields, type Backing } from './questions.ts';

const kept = { order: { id: text, number: number, amount: text, item: text }, notes: many(text) } as const;

export const askForOrderAct = act(
  'askForOrder',
  'OrderKept',
  { offer: text, packs: number, reason: maybe(text), lotWished: maybe(text), note: maybe(text) },
  kept,
);
export const placeOrderAct = act(
  'placeOrder',
  'OrderKept',
  { id: text, packs: maybe(number), price: maybe(text), expectedOn: maybe(text), theirNumber: maybe(text) },
  kept,
);
export const shelveOrderAct = act(
  'shelveOrder',
  'OrderKept',
  {
    id: text,
    lotNumber: text,
    packs: maybe(number),
    damagedPacks: maybe(number),
    isLast: maybe(flag),
    takeOtherLot: maybe(flag),
    retestOn: maybe(instant),
    certificateWaterPercent: maybe(number),
    room: text,
    vessel: maybe(text),
    innerDiameterMm: maybe(number),
    heightMm: maybe(number),
  },
  kept,
);
export const callOffOrderAct = act('callOffOrder', 'OrderKept', { id: text }, kept);
export const takeOrderBackAct = act('takeOrderBack', 'OrderKept', { id: text }, kept);

const offer = {
  articleNumber: maybe(text),
  packGrams: maybe(number),
  packPlates: maybe(number),
  backing: maybe(word<Backing>()),
  leadLeastWeeks: maybe(number),
  leadMostWeeks: maybe(number),
  shelfWeeks: maybe(number),
  quotedOn: maybe(text),
};
const prices = many({ from: number, price: text });
const offerKept = { offer: { id: text, name: text } };

export const addOfferAct = act(
  'addOffer',
  'OfferKept',
  { ...offer, supplier: text, sorbent: text, prices, leadUsualWeeks: number },
  offerKept,
);
export const setOfferAct = act(
  'setOffer',
  'OfferKept',
  { ...offer, id: text, prices: maybe(prices), leadUsualWeeks: maybe(number) },
  offerKept,
);
export const removeOfferAct = act('removeOffer', 'OfferKept', { id: text }, offerKept);
export const restoreOfferAct = act('restoreOffer', 'OfferKept', { id: text }, offerKept);
export const setTermsAct = act(
  'setSupplierTerms',
  'SupplierTermsKept',
  { supplier: text, deliveryFee: maybe(text), minOrder: maybe(text) },
  { supplier: { name: text } },
);

export const setItemAct = act(
  'setStockItem',
  'StockItemKept',
  { sorbent: text, backing: maybe(word<Backing>()), weeklyUse: maybe(number) },
  { item: { key: text } },
);

const campaignKept = { campaign: { id: text, name: text, lot: maybe({ lotNumber: text }) }, notes: many(text) };
const uses = many({ day: text, amount: number });

export const addCampaignAct = act(
  'addCampaign',
  'CampaignKept',
  { name: text, sorbent: text, backing: maybe(word<Backing>()), uses, note: maybe(text) },
  campaignKept,
);
export const postponeCampaignAct = act(
  'setCampaign',
  'CampaignKept',
  { id: text, postponeWeeks: maybe(number) },
  campaignKept,
);
export const dropCampaignAct = act('dropCampaign', 'CampaignKept', { id: text }, campaignKept);
export const restoreCampaignAct = act('restoreCampaign', 'CampaignKept', { id: text }, campaignKept);
export const keepLotAct = act(
  'keepLot',
  'CampaignKept',
  { campaign: text, lotNumber: maybe(text), takeUnchecked: maybe(flag) },
  campaignKept,
);
export const letLotGoAct = act('letLotGo', 'CampaignKept', { id: text }, campaignKept);

export const planOrdersAct = act(
  'planOrders',
  'OrdersPlanned',
  {
    weeks: maybe(number),
    whatIf: maybe({
      supplier: maybe(text),
      lateWeeks: maybe(number),
      pricePercent: maybe(number),
      rejectedLot: maybe(text),
    }),
  },
  { plan: planFields },
);
export const takePlanBackAct = act('takePurchasePlanBack', 'OrdersPlanned', { id: text }, { plan: { id: text } });
export const cancelPlanningAct = act(
  'cancelOrderPlanning',
  'PurchasePlanningCancelled',
  { keepBest: maybe(flag) },
  { wasPlanning: flag },
);
