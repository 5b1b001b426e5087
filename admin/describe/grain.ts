// A sorbent in one line: its class, its grain, its pores, and the water it should have.
import { percent } from '../say/water.ts';
import { policyWord } from '../say/words.ts';
import type { Sorbent } from './questions.ts';

type Grain = Pick<
  Sorbent,
  | 'sorbentClass'
  | 'particleSizeLowUm'
  | 'particleSizeHighUm'
  | 'meshLow'
  | 'meshHigh'
  | 'poreSizeNm'
  | 'bondedPhase'
  | 'reaction'
>;

const span = (low: number | null, high: number | null, unit: string): string | null => {
  if (low === null && high === null) return null;
  return low === null || high === null || low === high ? `${low ?? high}${unit}` : `${low} to ${high}${unit}`;
};

export function grainWords(of: Grain): string {
  const parts = [
    of.sorbentClass,
    of.bondedPhase,
    span(of.particleSizeLowUm, of.particleSizeHighUm, '\u00a0µm'),
    span(of.meshLow, of.meshHigh, '\u00a0mesh'),
    of.poreSizeNm === null ? null : `${of.poreSizeNm}\u00a0nm pores`,
    of.reaction?.toLowerCase(),
  ];
  return parts.filter(Boolean).join(' · ');
}

type Target = Pick<Sorbent, 'targetPolicy' | 'targetUpperWaterFraction' | 'targetLowerWaterFraction'>;

export function targetWords({
  targetPolicy,
  targetUpperWaterFraction: upper,
  targetLowerWaterFraction: lower,
}: Target): string {
  const policy = policyWord[targetPolicy];
  if (upper === null && lower === null)
    return targetPolicy === 'DRY' ? `Kept ${policy}: the default of its class` : `Kept ${policy}`;
  const band =
    lower === null || upper === null
      ? `${lower === null ? 'at most' : 'at least'} ${percent(upper ?? lower ?? 0)}`
      : `${percent(lower)} to ${percent(upper)}`;
  return `Kept ${policy}: ${band} water, dry basis`;
}
