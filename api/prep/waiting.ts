// Steps that only wait: nobody does anything for them, and what comes after may be ticked without them.
import type { PrepStepKind } from '../database/generated/sqlite/client.ts';

export const waiting = ['COOL', 'KEEP', 'REST'] as const satisfies readonly PrepStepKind[];

const kinds: ReadonlySet<PrepStepKind> = new Set(waiting);

export const isWaiting = (kind: PrepStepKind): boolean => kinds.has(kind);
