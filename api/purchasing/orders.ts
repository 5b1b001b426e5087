// Orders as they are read.
import type { Context } from '../context.ts';
import type { Order, OrderState } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';

const mostListed = 200;

export function ordersOf(
  { database, lab }: Context,
  states: readonly OrderState[] | null,
  first: number | null,
): Promise<Order[]> {
  const take = first ?? mostListed;
  if (take < 0 || take > mostListed) throw invalid('first', take, `from 0 to ${mostListed}`);
  return database.read.order.findMany({
    where: { labId: lab.id, ...(states ? { state: { in: [...states] } } : {}) },
    orderBy: { number: 'desc' },
    take,
  });
}
