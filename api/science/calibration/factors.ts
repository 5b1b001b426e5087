// The factors that weighings inform, by name, with what is held of each before the first weighing.
//
// All are natural logarithms of what multiplies, but for `bias` (of relative humidity) and `receipt:` (kg). Two that always
// act together are told apart by where else they act: a lot's capacity is that of its class times its own, a shut lid's inflow
// that of its closure's type times that of its container.
import type { CapacityDoubt, Factor } from '../history.ts';
import { prior } from '../uncertainty.ts';

/** How much of the variance of a lot's capacity its class shares; the rest is the lot's own (invented default). */
const classShare = 0.5;

export const className = (pool: string): string => `class:${pool}`;
export const lotName = (lot: string): string => `lot:${lot}`;
export const containerName = (key: string): string => `container:${key}`;
/** Water set at another instant (received, dried) is another unknown. */
export const startName = (key: string, fillS: number | string): string => `start:${key}@${fillS}`;
/** What the humidity of a salt differed by from what was told. */
export const saltName = (key: string, fillS: number | string): string => `salt:${key}@${fillS}`;
/** The error of the weighing that later ones are held against. */
export const receiptName = (key: string, sinceS: number): string => `receipt:${key}@${sinceS}`;

/** Known at one container, or at those that it was poured into; the others are shared by all. */
export const isLocal = (name: string): boolean => /^(container|start|salt|receipt):/.test(name);

export const classSd = ({ below }: CapacityDoubt): number => below * Math.sqrt(classShare);
export const lotSd = ({ below }: CapacityDoubt): number => below * Math.sqrt(1 - classShare);

/** One sigma of the factors that are neither capacity, start nor receipt. */
export function priorSd(name: string): number {
  if (name === 'bed') return prior.bed;
  if (name === 'open') return prior.open;
  if (name === 'bias') return prior.bias;
  return name.startsWith('container:') ? prior.container : prior.closed;
}

/** Where each factor stands; those that are missing stand at 0. */
export type Values = ReadonlyMap<string, number>;

export const valueOf = (values: Values, name: string): number => values.get(name) ?? 0;

/** The same in the words of the fold, for one container. */
export function foldFactors(values: Values, pool: string, lot: string, key: string): Factor[] {
  const capacity = valueOf(values, className(pool)) + valueOf(values, lotName(lot));
  const own: Factor[] = [
    { factor: 'capacity', ln: capacity, sd: 0 },
    { factor: 'container', ln: valueOf(values, containerName(key)), sd: 0 },
  ];
  const shared = [...values].flatMap(([factor, ln]) =>
    factor === 'bed' || factor === 'open' || factor.startsWith('closed:') ? [{ factor, ln, sd: 0 }] : [],
  );
  return [...own, ...shared];
}
