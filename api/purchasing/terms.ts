// What stands behind a plan: suppliers' terms, places whose room is short, and what the lab sets for one item.
import type { z } from 'zod';
import type { Context } from '../context.ts';
import type { StorageGroup } from '../database/generated/sqlite/client.ts';
import { invalid, unknown } from '../errors.ts';
import { localId, sorbentOf, supplierOf } from '../stock/service.ts';
import { told } from '../told.ts';
import { newId, write, type Work } from '../work.ts';
import { itemKey } from './item.ts';
import { minorSaid } from './money.ts';
import type { addStorageSaid, setStockItemSaid, setStorageSaid, supplierTermsSaid, whichSaid } from './said.ts';
import { currencyOf } from './settings.ts';

/** An amount that was taken away is none. */
const noneFor = (minor: number | null | undefined): number | undefined => (minor === null ? 0 : minor);

export function supplierTermsSet(
  context: Context,
  input: z.output<typeof supplierTermsSaid>,
): Promise<{ supplierId: string }> {
  return write(context, 'setSupplierTerms', input, async (work) => {
    const currency = currencyOf(context);
    const { id } = await supplierOf(work, input.supplier);
    const { deliveryFee, minOrder } = input;
    const data = told({
      deliveryFeeMinor: noneFor(minorSaid(deliveryFee, currency, 'input.deliveryFee')),
      minOrderMinor: noneFor(minorSaid(minOrder, currency, 'input.minOrder')),
    });
    await work.tx.supplier.update({ where: { id }, data });
    work.changed('Supplier', id, 'CHANGED');
    return { supplierId: id };
  });
}

async function storageOf(work: Work, id: string): Promise<StorageGroup> {
  const where = { id: localId('StorageGroup', id, 'input.id'), labId: work.labId };
  const storage = await work.tx.storageGroup.findFirst({ where });
  if (!storage) throw unknown('input.id', id, 'the id of a storage group of this lab');
  return storage;
}

async function checkName(work: Work, name: string, but: string | null): Promise<void> {
  const there = await work.tx.storageGroup.findMany({ where: { labId: work.labId, removedAt: null } });
  if (there.some((one) => one.id !== but && one.name.toLowerCase() === name.toLowerCase()))
    throw invalid('input.name', name, 'it is there already; a name of its own');
}

export function storageAdded(context: Context, input: z.output<typeof addStorageSaid>): Promise<{ storageId: string }> {
  return write(context, 'addStorage', input, async (work) => {
    await checkName(work, input.name, null);
    const { name, capacityL, overCost } = input;
    const overMinor = minorSaid(overCost, currencyOf(context), 'input.overCost') ?? 0;
    const data = { id: newId(), labId: work.labId, name, capacityL, overMinor, addedAt: work.now };
    await work.tx.storageGroup.create({ data });
    work.changed('StorageGroup', data.id, 'MADE');
    return { storageId: data.id };
  });
}

export function storageSet(context: Context, input: z.output<typeof setStorageSaid>): Promise<{ storageId: string }> {
  return write(context, 'setStorage', input, async (work) => {
    const { id } = await storageOf(work, input.id);
    if (input.name) await checkName(work, input.name, id);
    const overMinor = noneFor(minorSaid(input.overCost, currencyOf(context), 'input.overCost'));
    const data = {
      ...(input.name ? { name: input.name } : {}),
      ...(input.capacityL ? { capacityL: input.capacityL } : {}),
      ...told({ overMinor }),
    };
    await work.tx.storageGroup.update({ where: { id }, data });
    work.changed('StorageGroup', id, 'CHANGED');
    return { storageId: id };
  });
}

/** Takes a storage group out of use, or brings it back with what it held. */
export function storageKept(
  context: Context,
  name: 'removeStorage' | 'restoreStorage',
  input: z.output<typeof whichSaid>,
): Promise<{ storageId: string }> {
  return write(context, name, input, async (work) => {
    const storage = await storageOf(work, input.id);
    if (name === 'restoreStorage') await checkName(work, storage.name, storage.id);
    const removedAt = name === 'removeStorage' ? (storage.removedAt ?? work.now) : null;
    await work.tx.storageGroup.update({ where: { id: storage.id }, data: { removedAt } });
    work.changed('StorageGroup', storage.id, 'CHANGED');
    return { storageId: storage.id };
  });
}

/** What the lab sets for one item; null goes back to the lab's rule. */
export function stockItemSet(context: Context, input: z.output<typeof setStockItemSaid>): Promise<{ item: string }> {
  return write(context, 'setStockItem', input, async (work) => {
    const { tx, labId, now } = work;
    const { clientKey: _, sorbent, backing: on, storage, checkCost, ...rest } = input;
    const sorbentId = (await sorbentOf(work, sorbent)).id;
    const backing = on ?? null;
    const item = itemKey({ sorbentId, backing });
    const { isExpiring, ...numbers } = told(rest);
    const checkMinor = minorSaid(checkCost, currencyOf(context), 'input.checkCost');
    const data: Record<string, unknown> = { ...numbers, ...told({ checkMinor }), changedAt: now };
    if (typeof isExpiring === 'boolean') data['isExpiring'] = isExpiring;
    if (storage === null) data['storageId'] = null;
    else if (storage !== undefined) {
      const groups = await tx.storageGroup.findMany({ where: { labId, removedAt: null } });
      const found = groups.find(({ name }) => name.toLowerCase() === storage.toLowerCase());
      const names = groups.map(({ name }) => name).join(', ');
      if (!found)
        throw unknown('input.storage', storage, names ? `one of: ${names}` : 'there is no storage group yet; add one');
      data['storageId'] = found.id;
    }
    const key = { labId_item: { labId, item } };
    const create = { id: newId(), labId, item, sorbentId, backing, changedAt: now };
    await tx.boughtItem.upsert({ where: key, create: { ...create, ...data }, update: data });
    work.changed('StockItem', item, 'CHANGED');
    return { item };
  });
}
