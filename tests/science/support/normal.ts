// Standard normal numbers from a seed (Box and Muller).
import { dice } from './lab.ts';

export function normal(seed: number): () => number {
  const chance = dice(seed);
  return () => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}
