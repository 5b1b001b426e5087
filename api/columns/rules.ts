// Which column a sample wants, and all that a column of a size asks for, with what would be right where it asks too much.
import { invalid } from '../errors.ts';
import { oddColumnVolumes, restMinutes, restSource, usualColumnVolumes } from '../science/columns/conditioning.ts';
import { flashBedMm, flashColumnFor, flashColumns, type FlashColumn } from '../science/columns/still.ts';
import { bedGrams, bedMl, columnVolumeMl, flashFlowMlPerMin, totalPorosityOf } from '../science/columns/volumes.ts';

export const sizingSource = 'Still, Kahn & Mitra, J. Org. Chem. 1978, 43, 2923, Table I (from memory)';

export interface Sizing extends FlashColumn {
  bedLengthMm: number;
  /** Sample it parts at the ΔRf that was read, mg. */
  mostMg: number;
  /** The ΔRf of the table that was read: 0.2 or 0.1, never between. */
  readAtDeltaRf: number;
}

/** The next size up of the table: nothing is read between its rows or its columns. */
export function sizingOf(sampleMg: number, deltaRf: number): Sizing {
  if (deltaRf < 0.1) {
    const right =
      'at least 0.1; first another mobile phase in which they lie further apart (aim at Rf 0.35), or a finer sorbent under pressure';
    throw invalid('deltaRf', deltaRf, right);
  }
  const at = deltaRf >= 0.2 ? 0 : 1;
  const found = flashColumnFor(sampleMg, deltaRf);
  const largest = flashColumns.at(-1)?.sampleMg[at] ?? 0;
  if (!found) {
    const runs = Math.ceil(sampleMg / largest);
    const right = `at most ${largest} mg at this ΔRf: ${runs} runs of ${Math.ceil(sampleMg / runs)} mg on 50 mm, or a wider column reckoned by its bed area`;
    throw invalid('sampleMg', sampleMg, right);
  }
  return { ...found, bedLengthMm: flashBedMm, mostMg: found.sampleMg[at], readAtDeltaRf: at === 0 ? 0.2 : 0.1 };
}

export interface PlanAsked {
  sorbentClass: string;
  bulkDensityKgPerM3: number | null;
  innerDiameterMm: number;
  bedLengthMm: number;
  /** Of the table, where it was sized by it; mL. */
  eluentMl: number | null;
  fractionMl: number | null;
  columnVolumes: number | null;
  flowMlPerMin: number | null;
}

export interface Plan extends PlanAsked {
  columnVolumes: number;
  bedVolumeMl: number;
  totalPorosity: number;
  columnVolumeMl: number;
  sorbentDryGrams: number | null;
  conditioningMl: number;
  conditioningMinutes: number;
  flow: number;
  flowSource: string;
  solventInAllMl: number | null;
  /** After wetting alumina; null where no rest is usual. */
  restMinutes: number | null;
  restSource: string | null;
  cautions: string[];
  notes: string[];
}

const follow = 'follow your lab’s rules and the safety data sheet';

/** Beside packing and wetting. */
function cautionsOf(sorbentClass: string): string[] {
  const worse = 'worse with alcohols and low-boiling eluents: weakest eluent first, slowly';
  const heat =
    sorbentClass === 'alumina'
      ? `Freshly dried alumina gets hot when it is wetted, ${worse}, then wait until heat and bubbles are gone`
      : `Freshly dried sorbent warms when it is wetted, ${worse}`;
  return [
    'Pour and tap the dry powder in a hood, or with the mask your lab prescribes',
    heat,
    'A glass column under pressure: shield and relief valve',
    `Peroxide formers (ether, THF, dioxane): only tested ones, and not over alumina, which gathers peroxides; ${follow}`,
  ];
}

export function planOf(asked: PlanAsked): Plan {
  const { sorbentClass, innerDiameterMm: d, bedLengthMm: length } = asked;
  const flow = asked.flowMlPerMin ?? flashFlowMlPerMin(d);
  const volumeMl = columnVolumeMl(d, length, sorbentClass);
  const columnVolumes = asked.columnVolumes ?? usualColumnVolumes[1];
  const conditioningMl = columnVolumes * volumeMl;
  const odd = oddColumnVolumes(columnVolumes);
  const rests = sorbentClass === 'alumina';
  const byTable = 'the surface falls 2 in/min (Still, Kahn & Mitra 1978; from memory)';
  return {
    ...asked,
    columnVolumes,
    bedVolumeMl: bedMl(d, length),
    totalPorosity: totalPorosityOf(sorbentClass),
    columnVolumeMl: volumeMl,
    sorbentDryGrams: asked.bulkDensityKgPerM3 === null ? null : bedGrams(d, length, asked.bulkDensityKgPerM3),
    conditioningMl,
    conditioningMinutes: conditioningMl / flow,
    flow,
    flowSource: asked.flowMlPerMin === null ? byTable : 'as it was said',
    solventInAllMl: asked.eluentMl === null ? null : conditioningMl + asked.eluentMl,
    restMinutes: rests ? restMinutes(d) : null,
    restSource: rests ? restSource : null,
    cautions: cautionsOf(sorbentClass),
    notes: odd ? [odd] : [],
  };
}
