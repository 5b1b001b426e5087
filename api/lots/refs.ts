// The GraphQL types of lot checks, runs, decisions and grades, by name.
import { builder } from '../builder.ts';
import type { LotCheck, LotDecision, RetentionRun } from '../database/generated/sqlite/client.ts';

export const LotCheckRef = builder.objectRef<LotCheck>('LotCheck');
export const RetentionRunRef = builder.objectRef<RetentionRun>('RetentionRun');
export const LotDecisionRef = builder.objectRef<LotDecision>('LotDecision');
