// People, suppliers and vessels: what a line says of each, and the fields by which one is added or put right.
import type { FieldSpec, Typed } from '../act/field.ts';
import type { Kept } from './questions.ts';

export const personFields: readonly FieldSpec[] = [
  { name: 'role', label: 'Role', kind: 'text', hint: 'What they do, such as bench lead.' },
  { name: 'shortName', label: 'Short name', kind: 'text', hint: 'Once in the lab; scripts write it.' },
];
export const supplierFields: readonly FieldSpec[] = [{ name: 'name', label: 'Name', kind: 'text' }];

const mm = (name: string, label: string, optional = false): FieldSpec => ({
  name,
  label,
  kind: 'number',
  unit: 'mm',
  ...(optional ? { optional, hint: 'Empty: as wide as inside.' } : {}),
});
export const vesselFields: readonly FieldSpec[] = [
  { name: 'name', label: 'Name', kind: 'text' },
  mm('innerDiameterMm', 'Inner diameter'),
  mm('heightMm', 'Inner height'),
  mm('mouthDiameterMm', 'Mouth', true),
  { name: 'volumeMl', label: 'Volume', kind: 'number', unit: 'mL', optional: true, hint: 'Empty: that of a cylinder.' },
  { name: 'source', label: 'Where the sizes come from', kind: 'text', optional: true },
];

type Vessel = Kept['vessels']['nodes'][number];
const figure = (value: number): string => String(Number(value.toPrecision(4)));

export const vesselWords = ({ innerDiameterMm, heightMm, mouthDiameterMm, volumeMl }: Vessel): string => {
  const mouth = mouthDiameterMm === innerDiameterMm ? '' : `, mouth ${figure(mouthDiameterMm)}`;
  const volume = volumeMl >= 1000 ? `${figure(volumeMl / 1000)}\u00a0L` : `${figure(volumeMl)}\u00a0mL`;
  return `${figure(innerDiameterMm)} × ${figure(heightMm)}\u00a0mm${mouth}, ${volume}`;
};

export const vesselTyped = (of: Vessel): Typed => ({
  name: of.name,
  innerDiameterMm: figure(of.innerDiameterMm),
  heightMm: figure(of.heightMm),
  mouthDiameterMm: figure(of.mouthDiameterMm),
  volumeMl: figure(of.volumeMl),
  source: of.source,
});

/** Sizes remembered rather than measured look like it. */
export const isRemembered = ({ source }: Vessel): boolean => /memory/i.test(source);
