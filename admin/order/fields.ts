// The forms of ordering: what is asked in each.
import type { Choice, FieldSpec } from '../act/field.ts';
import type { Order } from './questions.ts';
import { pricesRead } from './words.ts';

/** Loose, or plates on a backing. */
const form: readonly FieldSpec[] = [
  {
    name: 'form',
    label: 'As',
    kind: 'choice',
    choices: [
      { value: 'BULK', words: 'loose' },
      { value: 'PLATES', words: 'plates' },
    ],
  },
  {
    name: 'backing',
    label: 'On',
    kind: 'choice',
    choices: [
      { value: 'GLASS', words: 'glass' },
      { value: 'ALUMINIUM', words: 'aluminium' },
      { value: 'PLASTIC', words: 'plastic' },
    ],
    when: { field: 'form', is: 'PLATES' },
  },
];

export const boughtFields: readonly FieldSpec[] = [
  { name: 'packs', label: 'Packs', kind: 'number', optional: true, hint: 'Empty: as asked for.' },
  { name: 'price', label: 'Price of one', kind: 'text', optional: true, hint: 'Empty: as quoted.' },
  { name: 'expectedOn', label: 'Expected on', kind: 'day', optional: true, hint: 'Empty: by the usual weeks.' },
  { name: 'theirNumber', label: 'Their number', kind: 'text', optional: true },
];

/** What came: the lot and where it stands; the rest only where it is not as expected. */
export function shelfFields(of: Order, rooms: readonly Choice[], vessels: readonly Choice[]): FieldSpec[] {
  const isPlates = of.unit === 'PLATES';
  return [
    {
      name: 'lotNumber',
      label: 'Lot, as printed',
      kind: 'text',
      ...(of.lotWished && { hint: `Wished: ${of.lotWished}.` }),
    },
    { name: 'room', label: 'Stands in', kind: 'choice', choices: rooms },
    {
      name: 'packs',
      label: 'Good packs',
      kind: 'number',
      optional: true,
      hint: `Empty: all ${of.packsToCome} that are to come, less the damaged. Fewer: the rest is still to come.`,
    },
    {
      name: 'damagedPacks',
      label: 'Damaged packs',
      kind: 'number',
      optional: true,
      hint: 'They do not go on the shelf.',
    },
    ...(isPlates
      ? []
      : [
          {
            name: 'vessel',
            label: 'Each is',
            kind: 'choice',
            choices: vessels,
            optional: true,
            hint: 'Empty: as the last of it.',
          } as const,
        ]),
    { name: 'retestOn', label: 'Retest on', kind: 'day', optional: true },
    ...(isPlates
      ? []
      : [
          {
            name: 'certificateWaterPercent',
            label: 'Water on the certificate',
            kind: 'number',
            unit: '%',
            optional: true,
            hint: 'Of the whole, as received.',
          } as const,
        ]),
    { name: 'isLast', label: 'nothing more of it will come', kind: 'tick', optional: true },
    ...(of.lotWished
      ? [{ name: 'takeOtherLot', label: 'keep it although it is another lot', kind: 'tick', optional: true } as const]
      : []),
  ];
}

const prices = (currency: string): FieldSpec => ({
  name: 'prices',
  label: `Price of a pack, ${currency}`,
  kind: 'text',
  hint: 'With breaks: 84.50; from 3: 80; from 8: 76.20',
  check: (text) => (pricesRead(text) === null ? 'such as 84.50; from 3: 80' : null),
});

export function offerFields(suppliers: readonly Choice[], sorbents: readonly Choice[], currency: string): FieldSpec[] {
  return [
    { name: 'supplier', label: 'From', kind: 'choice', choices: suppliers },
    { name: 'sorbent', label: 'Sorbent', kind: 'choice', choices: sorbents },
    ...form,
    { name: 'packGrams', label: 'One pack holds', kind: 'number', unit: 'g', when: { field: 'form', is: 'BULK' } },
    {
      name: 'packPlates',
      label: 'One box holds',
      kind: 'number',
      unit: 'plates',
      when: { field: 'form', is: 'PLATES' },
    },
    prices(currency),
    ...terms,
  ];
}

const terms: readonly FieldSpec[] = [
  { name: 'leadUsualWeeks', label: 'Usually here in', kind: 'number', unit: 'weeks' },
  { name: 'leadLeastWeeks', label: 'At the earliest', kind: 'number', unit: 'weeks', optional: true },
  { name: 'leadMostWeeks', label: 'At the latest', kind: 'number', unit: 'weeks', optional: true },
  {
    name: 'shelfWeeks',
    label: 'Keeps',
    kind: 'number',
    unit: 'weeks',
    optional: true,
    hint: 'Until its retest; empty: nobody said.',
  },
  { name: 'quotedOn', label: 'Quoted on', kind: 'day', optional: true },
  { name: 'articleNumber', label: 'Their number for it', kind: 'text', optional: true },
];

/** A new quote of an offer that is there. */
export const quoteFields = (currency: string): FieldSpec[] => [prices(currency), ...terms];

export const termsFields = (currency: string): FieldSpec[] => [
  {
    name: 'deliveryFee',
    label: `A delivery costs, ${currency}`,
    kind: 'text',
    optional: true,
    hint: 'Empty: nothing.',
  },
  {
    name: 'minOrder',
    label: `Least an order may be, ${currency}`,
    kind: 'text',
    optional: true,
    hint: 'Empty: anything.',
  },
];

export const campaignFields = (sorbents: readonly Choice[]): FieldSpec[] => [
  { name: 'name', label: 'What it is', kind: 'text', hint: 'As one says it: “alkaloid screen”.' },
  { name: 'sorbent', label: 'Sorbent', kind: 'choice', choices: sorbents },
  ...form,
  { name: 'amount', label: 'Each time, dry g or plates', kind: 'number' },
  { name: 'day', label: 'First on', kind: 'day' },
  { name: 'uses', label: 'How many times', kind: 'number', initial: '1' },
  { name: 'every', label: 'Every … weeks', kind: 'number', initial: '1' },
];

export const whatIfFields = (suppliers: readonly Choice[], lots: readonly Choice[]): FieldSpec[] => [
  {
    name: 'supplier',
    label: 'Supplier',
    kind: 'choice',
    choices: suppliers,
    optional: true,
    hint: 'Empty: all of them.',
  },
  { name: 'lateWeeks', label: 'Late by', kind: 'number', unit: 'weeks', optional: true },
  { name: 'pricePercent', label: 'Prices up by', kind: 'number', unit: '%', optional: true },
  { name: 'rejectedLot', label: 'Lot rejected', kind: 'choice', choices: lots, optional: true },
];
