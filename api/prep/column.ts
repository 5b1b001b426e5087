// The column of a need in numbers: what was said, or what the flash table gives for its sample.
import type { Need } from '../database/generated/sqlite/client.ts';
import { invalid } from '../errors.ts';
import { usualDensityKgPerM3 } from '../ovens/service.ts';
import { flashBedMm, flashColumnFor, type FlashColumn } from '../science/columns/still.ts';
import { bedGrams, columnVolumeMl, flashFlowMlPerMin } from '../science/columns/volumes.ts';
import { sorbentClass as classOf } from '../science/properties.ts';

export interface ColumnSize {
  diameterMm: number;
  bedLengthMm: number;
  dryGrams: number;
  columnVolumeMl: number;
  conditioningMl: number;
  flowMlPerMin: number;
  conditioningMinutes: number;
  /** The row of the flash table, where the sample decided. */
  flash: FlashColumn | null;
}

/** What decides a column, apart from its sorbent. */
export type Said = Pick<Need, 'diameterMm' | 'bedLengthMm' | 'sampleMg' | 'deltaRf' | 'columnVolumes' | 'flowMlPerMin'>;

/** Refuses a sample that no column of the table parts. */
export function checkSample({ diameterMm, sampleMg, deltaRf }: Said, under = 'input'): void {
  if (diameterMm !== null || sampleMg === null || deltaRf === null || flashColumnFor(sampleMg, deltaRf)) return;
  throw invalid(
    `${under}.sampleMg`,
    sampleMg,
    `at most ${deltaRf >= 0.2 ? 2500 : 1000} mg at this ΔRf (Still, Kahn & Mitra 1978, Table I); say diameter and bed length for more`,
  );
}

/** Of a kind that grams per mL are known of; bulk density as the sorbent has it, else its class, else like silica. */
export function sizeOf(
  said: Said,
  sorbentClass: string,
  bulkDensityKgPerM3: number | null,
  usualVolumes: number,
): ColumnSize | null {
  const flash =
    said.diameterMm === null && said.sampleMg !== null && said.deltaRf !== null
      ? flashColumnFor(said.sampleMg, said.deltaRf)
      : null;
  const diameterMm = said.diameterMm ?? flash?.diameterMm;
  if (diameterMm === undefined) return null;
  const bedLengthMm = said.bedLengthMm ?? flashBedMm;
  const density = bulkDensityKgPerM3 ?? classOf(sorbentClass)?.bulkDensityKgPerM3 ?? usualDensityKgPerM3;
  const volume = columnVolumeMl(diameterMm, bedLengthMm, sorbentClass);
  const flowMlPerMin = said.flowMlPerMin ?? flashFlowMlPerMin(diameterMm);
  const conditioningMl = (said.columnVolumes ?? usualVolumes) * volume;
  return {
    diameterMm,
    bedLengthMm,
    dryGrams: bedGrams(diameterMm, bedLengthMm, density),
    columnVolumeMl: volume,
    conditioningMl,
    flowMlPerMin,
    conditioningMinutes: conditioningMl / flowMlPerMin,
    flash,
  };
}
