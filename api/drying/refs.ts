// The GraphQL types of drying, by name, so that other rooms can point at them and add fields to them.
import { builder } from '../builder.ts';
import type { DryingRequest } from '../database/generated/sqlite/client.ts';

export const RequestRef = builder.objectRef<DryingRequest>('DryingRequest');
