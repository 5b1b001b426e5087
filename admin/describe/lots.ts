// A lot's own facts as a form, and the act that puts them back.
import type { FieldSpec, Typed } from '../act/field.ts';
import type { Clock } from '../say/state.ts';
import { spokenDay } from '../say/time.ts';
import { ofWhole } from './band.ts';
import type { Lot } from './questions.ts';

export function lotFields(suppliers: readonly string[]): FieldSpec[] {
  const water = (name: string, label: string): FieldSpec => ({
    name,
    label,
    kind: 'number',
    unit: '%',
    optional: true,
  });
  return [
    { name: 'newLotNumber', label: 'Lot number, as printed', kind: 'text' },
    {
      name: 'supplier',
      label: 'Supplier',
      kind: 'choice',
      optional: true,
      choices: suppliers.map((value) => ({ value, words: value })),
    },
    {
      ...water('certificateWaterPercent', 'Water on its certificate of analysis'),
      hint: 'As received. What came in by it begins anew, as a correction on its timeline.',
    },
    water('certificateMaxWaterPercent', 'Highest water it allows'),
    { name: 'retestOn', label: 'Retest date', kind: 'day', optional: true },
    { name: 'note', label: 'Note', kind: 'text', optional: true },
  ];
}

const percentOf = (dry: number | null): number | null =>
  dry === null ? null : Number((100 * ofWhole(dry)).toFixed(6));
const typedPercent = (dry: number | null): string => {
  const percent = percentOf(dry);
  return percent === null ? '' : String(Number(percent.toFixed(3)));
};

/** What stands in the form; `clock` reads an instant as a field of date and time. */
export const lotTyped = (lot: Lot, clock: (at: string) => string): Typed => ({
  newLotNumber: lot.lotNumber,
  supplier: lot.supplier?.name ?? '',
  certificateWaterPercent: typedPercent(lot.certificateWaterFraction),
  certificateMaxWaterPercent: typedPercent(lot.certificateMaxWaterFraction),
  retestOn: lot.retestOn === null ? '' : clock(lot.retestOn).slice(0, 10),
  note: lot.note ?? '',
});

const changedPercent = (name: string, value: unknown, dry: number | null): Record<string, unknown> =>
  typeof value === 'number' && String(value) === typedPercent(dry)
    ? {}
    : value === percentOf(dry)
      ? {}
      : { [name]: value };

/** What of the form is another than before: water that was not touched keeps all its digits. */
export function lotInput(lot: Lot, values: Record<string, unknown>) {
  const { newLotNumber, certificateWaterPercent: water, certificateMaxWaterPercent: most, ...rest } = values;
  return {
    lotNumber: lot.lotNumber,
    ...(newLotNumber === lot.lotNumber ? {} : { newLotNumber: String(newLotNumber) }),
    ...rest,
    ...changedPercent('certificateWaterPercent', water, lot.certificateWaterFraction),
    ...changedPercent('certificateMaxWaterPercent', most, lot.certificateMaxWaterFraction),
  };
}

const hundred = (fraction: number | null): number | null => (fraction === null ? null : 100 * fraction);

export const lotBefore = (lot: Lot, numberNow: string) => ({
  lotNumber: numberNow,
  ...(numberNow === lot.lotNumber ? {} : { newLotNumber: lot.lotNumber }),
  supplier: lot.supplier?.name ?? null,
  retestOn: lot.retestOn,
  certificateWaterPercent: hundred(lot.certificateWaterFraction),
  certificateMaxWaterPercent: hundred(lot.certificateMaxWaterFraction),
  certificateBasis: 'DRY' as const,
  note: lot.note,
});

export const retestWords = (at: string, { now, zone }: Clock): string => {
  const day = spokenDay(new Date(at), now, zone);
  return Date.parse(at) < now.getTime() ? `retest was due ${day}` : `retest ${day}`;
};
