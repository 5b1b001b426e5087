// The form of what came in: a lot, and how many containers of it stand where.
import type { Choice, FieldSpec } from '../act/field.ts';
import { closureWord, type Closure } from '../say/words.ts';

export interface Known {
  sorbents: readonly Choice[];
  suppliers: readonly Choice[];
  rooms: readonly Choice[];
  vessels: readonly Choice[];
}

export const otherSupplier = 'another supplier …';
export const ownSizes = 'one of other sizes …';

const closures: readonly Closure[] = ['SEALED', 'TIGHT', 'WELL_CLOSED', 'LOOSELY_COVERED', 'OPEN'];

export function lotFields({ sorbents, suppliers }: Known): FieldSpec[] {
  return [
    { name: 'sorbent', label: 'Sorbent', kind: 'choice', choices: sorbents },
    {
      name: 'supplier',
      label: 'Supplier',
      kind: 'choice',
      optional: true,
      hint: 'Empty: nobody knows.',
      choices: [...suppliers, { value: otherSupplier, words: otherSupplier }],
    },
    { name: 'newSupplier', label: 'Its name', kind: 'text', when: { field: 'supplier', is: otherSupplier } },
    { name: 'lotNumber', label: 'Lot number, as printed', kind: 'text' },
  ];
}

export function containerFields({ rooms, vessels }: Known): FieldSpec[] {
  const isSorbent = { field: 'kind', is: 'DRUM' };
  const isPlates = { field: 'kind', is: 'PLATE_BOX' };
  return [
    {
      name: 'kind',
      label: 'What came',
      kind: 'choice',
      choices: [
        { value: 'DRUM', words: 'drums, bottles or jars' },
        { value: 'PLATE_BOX', words: 'boxes of plates' },
      ],
    },
    { name: 'count', label: 'How many, all alike', kind: 'number', initial: '1' },
    { name: 'grams', label: 'In each', kind: 'number', unit: 'g', when: isSorbent },
    { name: 'plates', label: 'Plates in each', kind: 'number', when: isPlates },
    {
      name: 'backing',
      label: 'Backing',
      kind: 'choice',
      when: isPlates,
      choices: [
        { value: 'GLASS', words: 'glass' },
        { value: 'ALUMINIUM', words: 'aluminium' },
        { value: 'PLASTIC', words: 'plastic' },
      ],
    },
    { name: 'vessel', label: 'Vessel', kind: 'choice', choices: vessels, when: isSorbent },
    {
      name: 'closure',
      label: 'It stands',
      kind: 'choice',
      choices: closures.map((value) => ({ value, words: closureWord[value] })),
    },
    { name: 'room', label: 'Where', kind: 'choice', choices: rooms },
  ];
}

const isPlates = { field: 'kind', is: 'PLATE_BOX' };
const hasOwnSizes = { field: 'vessel', is: ownSizes };
const mm = { kind: 'number', unit: 'mm' } as const;

/** One kind of pack: what a container is, its own sizes where no listed vessel has them, and what its plates are. */
export function packFields(known: Known): FieldSpec[] {
  const all = containerFields({ ...known, vessels: [...known.vessels, { value: ownSizes, words: ownSizes }] });
  const after = (name: string, more: FieldSpec[]) => (field: FieldSpec) =>
    field.name === name ? [field, ...more] : [field];
  return all
    .flatMap(
      after('vessel', [
        { name: 'innerDiameterMm', label: 'Inner diameter', ...mm, when: hasOwnSizes },
        { name: 'heightMm', label: 'Inner height', ...mm, when: hasOwnSizes },
        {
          name: 'mouthDiameterMm',
          label: 'Mouth',
          ...mm,
          optional: true,
          hint: 'Empty: as wide as inside.',
          when: hasOwnSizes,
        },
      ]),
    )
    .flatMap(
      after('backing', [
        { name: 'layerThicknessMm', label: 'Layer', ...mm, optional: true, hint: 'Empty: 0.25 mm.', when: isPlates },
        { name: 'plateWidthMm', label: 'Plate width', ...mm, optional: true, hint: 'Empty: 200 mm.', when: isPlates },
        { name: 'plateHeightMm', label: 'Plate height', ...mm, optional: true, hint: 'Empty: 200 mm.', when: isPlates },
      ]),
    );
}

export const moreFields: FieldSpec[] = [
  { name: 'receivedAt', label: 'When it came', kind: 'time', optional: true, hint: 'Empty: now.' },
  {
    name: 'startWaterFraction',
    label: 'Water found in it',
    kind: 'number',
    unit: '%',
    scale: 0.01,
    optional: true,
    hint: 'Dry basis. Empty: the certificate’s; without one it is “weigh first”, never a silent guess.',
  },
  {
    name: 'certificateWaterPercent',
    label: 'Water on the certificate',
    kind: 'number',
    unit: '%',
    optional: true,
  },
  {
    name: 'certificateMaxWaterPercent',
    label: 'At most, on the certificate',
    kind: 'number',
    unit: '%',
    optional: true,
  },
  {
    name: 'certificateBasis',
    label: 'The certificate counts on',
    kind: 'choice',
    optional: true,
    hint: 'Empty: as received, as certificates speak.',
    choices: [
      { value: 'AS_RECEIVED', words: 'the whole, as received' },
      { value: 'DRY', words: 'the dry sorbent' },
    ],
  },
  { name: 'retestOn', label: 'Retest on', kind: 'day', optional: true },
  { name: 'note', label: 'Note', kind: 'text', optional: true },
];

const ofContainer = new Set([
  'kind',
  'count',
  'grams',
  'plates',
  'backing',
  'layerThicknessMm',
  'plateWidthMm',
  'plateHeightMm',
  'vessel',
  'innerDiameterMm',
  'heightMm',
  'mouthDiameterMm',
  'closure',
  'room',
  'startWaterFraction',
]);

type Values = Record<string, string | number | boolean>;

const packOf = (values: Values): Values =>
  Object.fromEntries(
    Object.entries(values).filter(
      ([name, value]) => ofContainer.has(name) && !(name === 'vessel' && value === ownSizes),
    ),
  );

/** The input of `receiveLot` of the form's values; `others` are further kinds of pack of the same lot. */
export function receivedInput({ newSupplier, supplier, ...values }: Values, others: readonly Values[] = []) {
  const entries = Object.entries(values);
  const named = newSupplier ?? supplier;
  const { startWaterFraction } = values;
  const water = startWaterFraction === undefined ? {} : { startWaterFraction };
  return {
    ...Object.fromEntries(entries.filter(([name]) => !ofContainer.has(name))),
    ...(named === undefined ? {} : { supplier: named }),
    containers: [packOf(values), ...others.map((other) => ({ ...packOf(other), ...water }))],
  };
}
