// The request that an act was about, as GraphQL answers it.
import type { DryingRequest } from '../database/generated/sqlite/client.ts';
import { fresh, there } from '../stock/schema.ts';
import type { Context } from '../context.ts';
import type { Requested } from './request.ts';

export async function requestOf(context: Context, requested: Promise<Requested>): Promise<DryingRequest> {
  const { requestId } = await fresh(context, requested);
  return there(await context.load.dryingRequest.load(requestId), 'drying request');
}
