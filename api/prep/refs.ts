// The GraphQL types of needs and the prep sheet, by name.
import { builder } from '../builder.ts';
import type { Need, PrepStep, SolventBatch } from '../database/generated/sqlite/client.ts';

export const NeedRef = builder.objectRef<Need>('Need');
export const PrepStepRef = builder.objectRef<PrepStep>('PrepStep');
export const SolventBatchRef = builder.objectRef<SolventBatch>('SolventBatch');
