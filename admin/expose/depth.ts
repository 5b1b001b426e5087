// The water in the bed from the top down, as a stepped line in a small picture.
import { percent } from '../say/water.ts';

export interface Layer {
  depthMm: number;
  waterFraction: number;
}

export interface DepthPicture {
  /** The line in a box 100 wide and 100 high: water to the right, depth downwards. */
  path: string;
  limit: number | null;
  wettest: number;
  deepest: number;
}

export function depthPicture(profile: readonly Layer[], upper: number | null): DepthPicture {
  const deepest = Math.max(...profile.map(({ depthMm }) => depthMm), 1e-9);
  const wettest = Math.max(...profile.map(({ waterFraction }) => waterFraction), (upper ?? 0) * 1.2, 1e-9);
  const points = profile.map(({ depthMm, waterFraction }) => {
    return `${((waterFraction / wettest) * 100).toFixed(2)} ${((depthMm / deepest) * 100).toFixed(2)}`;
  });
  return { path: `M${points.join('L')}`, limit: upper === null ? null : (upper / wettest) * 100, wettest, deepest };
}

export function depthWords(profile: readonly Layer[], upper: number | null): string {
  const top = profile[0];
  const bottom = profile.at(-1);
  if (!top || !bottom) return '';
  const past = upper === null ? undefined : profile.findLast(({ waterFraction }) => waterFraction > upper);
  const wet = past ? `; past its upper end down to ${past.depthMm.toFixed(0)} mm` : '';
  return `Now ${percent(top.waterFraction)} at the top and ${percent(bottom.waterFraction)} at ${bottom.depthMm.toFixed(0)} mm${wet}.`;
}
