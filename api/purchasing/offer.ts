// Offers as they are told, set anew, taken out of use and brought back.
import { z } from 'zod';
import type { Context } from '../context.ts';
import type { Offer } from '../database/generated/sqlite/client.ts';
import { missing, unknown } from '../errors.ts';
import { localId, sorbentOf, supplierOf } from '../stock/service.ts';
import { told } from '../told.ts';
import { newId, write, type Work } from '../work.ts';
import { amountOf, type Currency, minorOf } from './money.ts';
import { checkLead, checkPack, checkPrices, type Price } from './rules.ts';
import { addOfferSaid, type OfferSaid, type setOfferSaid, type whichSaid } from './said.ts';
import { currencyOf } from './settings.ts';

const storedPrices = z.array(z.object({ from: z.number(), minor: z.number() }));

/** Prices by packs, the first from 1. */
export const pricesOf = ({ prices }: { prices: unknown }): Price[] => storedPrices.parse(prices);

async function columnsOf(work: Work, said: OfferSaid, currency: Currency) {
  const { supplier, sorbent, prices: priced, ...rest } = said;
  const prices = priced.map(({ from, price }, index) => ({
    from,
    minor: minorOf(price, currency, `input.prices.${index}.price`),
  }));
  checkPrices(prices, (minor) => amountOf(minor, currency));
  const backing = said.backing ?? (said.packPlates !== null ? 'GLASS' : null);
  const pack = { backing, packGrams: said.packGrams, packPlates: said.packPlates };
  checkPack(pack);
  const lead = {
    leadLeastWeeks: said.leadLeastWeeks ?? said.leadUsualWeeks,
    leadUsualWeeks: said.leadUsualWeeks,
    leadMostWeeks: said.leadMostWeeks ?? said.leadUsualWeeks,
  };
  checkLead(lead);
  return {
    ...rest,
    ...pack,
    ...lead,
    prices: prices.map((price) => ({ ...price })),
    supplierId: (await supplierOf(work, supplier)).id,
    sorbentId: (await sorbentOf(work, sorbent)).id,
  };
}

/** Writes one offer, within a larger act. */
async function made(work: Work, said: OfferSaid, currency: Currency): Promise<string> {
  const columns = await columnsOf(work, said, currency);
  const stamps = { id: newId(), labId: work.labId, addedAt: work.now, changedAt: work.now };
  const { id } = await work.tx.offer.create({ data: { ...columns, ...stamps } });
  work.changed('Offer', id, 'MADE');
  return id;
}

export async function offerOf({ tx, labId }: Pick<Work, 'tx' | 'labId'>, id: string, path: string): Promise<Offer> {
  const offer = await tx.offer.findFirst({ where: { id: localId('Offer', id, path), labId } });
  if (!offer) throw unknown(path, id, 'the id of an offer of this lab');
  return offer;
}

export function offerAdded(context: Context, input: z.output<typeof addOfferSaid>): Promise<{ offerId: string }> {
  const { clientKey: _, ...said } = input;
  return write(context, 'addOffer', input, async (work) => ({ offerId: await made(work, said, currencyOf(context)) }));
}

/** An offer as it would be told today: a time that is the usual one was not told apart, and follows that. */
async function saidOf(work: Work, offer: Offer, currency: Currency): Promise<OfferSaid> {
  const { tx } = work;
  const supplier = await tx.supplier.findUniqueOrThrow({ where: { id: offer.supplierId } });
  const sorbent = await tx.sorbent.findUniqueOrThrow({ where: { id: offer.sorbentId } });
  const prices = pricesOf(offer).map(({ from, minor }) => ({ from, price: amountOf(minor, currency) }));
  const own = (weeks: number) => (weeks === offer.leadUsualWeeks ? null : weeks);
  return addOfferSaid.parse({
    ...{ ...offer, supplier: supplier.name, sorbent: sorbent.name, prices },
    leadLeastWeeks: own(offer.leadLeastWeeks),
    leadMostWeeks: own(offer.leadMostWeeks),
  });
}

/** What no offer can be without cannot be taken away. */
function needed<Of>(said: Of | null | undefined, name: string): Of | undefined {
  if (said === null) throw missing(`input.${name}`, 'something');
  return said;
}

export function offerSet(context: Context, input: z.output<typeof setOfferSaid>): Promise<{ offerId: string }> {
  return write(context, 'setOffer', input, async (work) => {
    const currency = currencyOf(context);
    const offer = await offerOf(work, input.id, 'input.id');
    const { id: _, clientKey: __, supplier, sorbent, prices, leadUsualWeeks, ...rest } = input;
    const changes = {
      ...rest,
      supplier: needed(supplier, 'supplier'),
      sorbent: needed(sorbent, 'sorbent'),
      prices: needed(prices, 'prices'),
      leadUsualWeeks: needed(leadUsualWeeks, 'leadUsualWeeks'),
    };
    const { clientKey: ___, ...before } = { clientKey: null, ...(await saidOf(work, offer, currency)) };
    const columns = await columnsOf(work, { ...before, ...told(changes) }, currency);
    await work.tx.offer.update({ where: { id: offer.id }, data: { ...columns, changedAt: work.now } });
    work.changed('Offer', offer.id, 'CHANGED');
    return { offerId: offer.id };
  });
}

/** Takes an offer out of use, or brings it back; orders of it stay. */
export function offerKept(
  context: Context,
  name: 'removeOffer' | 'restoreOffer',
  input: z.output<typeof whichSaid>,
): Promise<{ offerId: string }> {
  return write(context, name, input, async (work) => {
    const offer = await offerOf(work, input.id, 'input.id');
    const removedAt = name === 'removeOffer' ? (offer.removedAt ?? work.now) : null;
    await work.tx.offer.update({ where: { id: offer.id }, data: { removedAt, changedAt: work.now } });
    work.changed('Offer', offer.id, 'CHANGED');
    return { offerId: offer.id };
  });
}
