// What was noted of an oven, in a sentence.
import type { OvenCare } from '../database/generated/sqlite/client.ts';

const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(Math.round(10 * value) / 10)}`;

/** Found less what it should be, °C, mbar or % RH; null where there is no figure. */
export const offsetOf = ({ setValue, foundValue }: Pick<OvenCare, 'setValue' | 'foundValue'>): number | null =>
  setValue === null || foundValue === null ? null : foundValue - setValue;

/** What was noted, in one sentence. */
export function careSentence(care: OvenCare): string {
  const { kind, setValue, foundValue, salt, temperatureC } = care;
  const off = signed(offsetOf(care) ?? 0);
  switch (kind) {
    case 'TRUE_TEMPERATURE':
      return `Set to ${setValue} °C it is truly ${foundValue} °C (${off} °C)`;
    case 'VACUUM_GAUGE':
      return `Its gauge showed ${setValue} mbar at a true ${foundValue} mbar`;
    case 'PUMP_OIL':
      return 'The oil of its pump was changed';
    case 'COLD_TRAP':
      return 'Its cold trap was emptied';
    case 'BAKE_OUT':
      return 'It was baked out empty';
    case 'OUT_OF_ORDER':
      return 'It is out of order';
    case 'HYGROMETER':
      return `Over saturated ${salt} at ${temperatureC} °C it showed ${foundValue} % for ${setValue} % (${off} %)`;
  }
}
