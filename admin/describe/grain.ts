// What a sorbent is, in one line and as fields: its class, its grain, its pores.
import type { FieldSpec, Typed } from '../act/field.ts';
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

export const grainFields: readonly FieldSpec[] = [
  { name: 'name', label: 'Name', kind: 'text' },
  {
    name: 'sorbentClass',
    label: 'Class',
    kind: 'text',
    initial: 'silica',
    hint: 'silica, alumina, c18, magnesium silicate, cellulose, or one of your own: then its numbers are unknown until measured.',
  },
  { name: 'particleSizeLowUm', label: 'Grain from', kind: 'number', unit: 'µm', optional: true },
  { name: 'particleSizeHighUm', label: 'Grain to', kind: 'number', unit: 'µm', optional: true },
  { name: 'meshLow', label: 'Coarser sieve', kind: 'number', unit: 'mesh', optional: true },
  { name: 'meshHigh', label: 'Finer sieve', kind: 'number', unit: 'mesh', optional: true },
  { name: 'poreSizeNm', label: 'Pores', kind: 'number', unit: 'nm', optional: true },
  { name: 'bondedPhase', label: 'Bonded phase', kind: 'text', optional: true },
  {
    name: 'reaction',
    label: 'Reaction',
    kind: 'choice',
    optional: true,
    choices: [
      { value: 'ACIDIC', words: 'acidic' },
      { value: 'NEUTRAL', words: 'neutral' },
      { value: 'BASIC', words: 'basic' },
    ],
  },
];

const typed = (value: string | number | null): string => (value === null ? '' : String(value));

/** What stands in the fields of a sorbent that is there. */
export const grainTyped = (of: Grain & { name: string }): Typed => ({
  name: of.name,
  sorbentClass: of.sorbentClass,
  particleSizeLowUm: typed(of.particleSizeLowUm),
  particleSizeHighUm: typed(of.particleSizeHighUm),
  meshLow: typed(of.meshLow),
  meshHigh: typed(of.meshHigh),
  poreSizeNm: typed(of.poreSizeNm),
  bondedPhase: typed(of.bondedPhase),
  reaction: typed(of.reaction),
});
