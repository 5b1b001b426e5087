// A column in words: planned, packed, conditioned.
import { grams, percent } from '../say/water.ts';
import type { Packed, Plan } from './column-questions.ts';

const ml = (value: number): string => `${Number(value.toPrecision(value < 100 ? 2 : 3))}\u00a0mL`;
const short = (value: number): string => String(Number(value.toPrecision(3)));

/** "20 × 150 mm; 200 mL of eluent, fractions of 10 mL". */
export function sizedWords({ innerDiameterMm, bedLengthMm, eluentMl, fractionMl }: Plan): string {
  const size = `${short(innerDiameterMm ?? 0)} × ${short(bedLengthMm ?? 0)}\u00a0mm`;
  const run = eluentMl == null ? '' : `; ${ml(eluentMl)} of eluent, fractions of ${ml(fractionMl ?? 0)}`;
  return size + run;
}

/** What to weigh, to pour and to wait for. */
export function planWords(plan: Plan): string {
  const { sorbentDryGrams, columnVolumeMl, columnVolumes, conditioningMl, conditioningMinutes, flowMlPerMin } = plan;
  const parts = [
    sorbentDryGrams == null ? '' : `${grams(sorbentDryGrams)} of dry sorbent`,
    `one column volume is ${ml(columnVolumeMl ?? 0)}`,
    `condition with ${short(columnVolumes ?? 0)} of them, ${ml(conditioningMl ?? 0)}, about ${Math.max(1, Math.round(conditioningMinutes ?? 0))}\u00a0min at ${ml(flowMlPerMin ?? 0)}/min`,
    plan.solventInAllMl == null ? '' : `${ml(plan.solventInAllMl)} of solvent in all`,
  ];
  return parts.filter(Boolean).join('; ');
}

export interface Row {
  name: string;
  value: string;
}

/** The record of a packing, what nobody said left out. */
export function packingRows(packing: NonNullable<Packed['packing']>): Row[] {
  const { waterFraction, waterAssumed, densityKgPerM3, method, flowMlPerMin, pressureBar } = packing;
  const rows: (readonly [string, string | null])[] = [
    ['Sorbent', `${grams(packing.dryGrams)} dry`],
    ['On the balance', packing.asReceivedGrams === null ? null : grams(packing.asReceivedGrams)],
    ['Water then', waterFraction === null ? null : `${percent(waterFraction)}${waterAssumed ? ', assumed' : ''}`],
    ['Bed', `${short(packing.bedLengthMm)}\u00a0mm`],
    ['Packed to', densityKgPerM3 === null ? null : `${short(densityKgPerM3 / 1000)}\u00a0g/mL`],
    ['How', method === null ? null : method === 'DRY' ? 'dry' : 'as a slurry'],
    ['Tapping', packing.tapping],
    ['Flow', flowMlPerMin === null ? null : `${ml(flowMlPerMin)}/min`],
    ['Pressure', pressureBar === null ? null : `${short(pressureBar)}\u00a0bar`],
    ['Packer', packing.packer],
    ['Dye test', packing.dyeTest],
  ];
  return rows.flatMap(([name, value]) => (value === null ? [] : [{ name, value }]));
}

export function conditionedWords({
  mobilePhase,
  columnVolumes,
  minutes,
  flowMlPerMin,
}: Packed['conditionings'][number]) {
  const parts = [
    mobilePhase ?? 'mobile phase',
    columnVolumes === null ? '' : `${short(columnVolumes)} column volumes`,
    flowMlPerMin === null ? '' : `${ml(flowMlPerMin)}/min`,
    minutes === null ? '' : `${short(minutes)}\u00a0min`,
  ];
  return parts.filter(Boolean).join(', ');
}
