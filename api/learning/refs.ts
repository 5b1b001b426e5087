// The GraphQL types of learning, by name.
import { builder } from '../builder.ts';
import type { LearnedFact, Says, WeighingSeen } from './learned.ts';

export const LearnedFactorRef = builder.objectRef<LearnedFact>('LearnedFactor');
export const SaysRef = builder.objectRef<Says & { kind: LearnedFact['kind'] }>('WeighingSays');
export const WeighingRef = builder.objectRef<WeighingSeen>('Weighing');
