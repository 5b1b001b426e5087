// The GraphQL types of learning, by name.
import { builder } from '../builder.ts';
import type { LearnedFact, WeighingSeen } from './learned.ts';

export const LearnedFactorRef = builder.objectRef<LearnedFact>('LearnedFactor');
export const WeighingRef = builder.objectRef<WeighingSeen>('Weighing');
