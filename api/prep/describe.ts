// What each step takes and leaves: solvents by load, waste by stream, heat, depth, cautions.
import { usualDepthMm } from '../ovens/service.ts';
import { loadsOf } from '../science/prep/loads.ts';
import { millilitres, partsOf, wasteOf } from '../science/prep/solvents.ts';
import type { PlannedStep } from '../science/prep/stages.ts';
import { five } from './chain-building.ts';
import { ovenCautions, solventCautions, washCautions } from './cautions.ts';
import { plainDetail, type StepDetail } from './detail.ts';
import { amountOf, type NeedFacts } from './facts.ts';
import type { HeatOf } from './heat.ts';
import type { PrepSettings } from './settings.ts';
import { preWashOf } from './washed-in.ts';

export interface Describing {
  settings: PrepSettings;
  ovenNames: ReadonlyMap<string, string>;
  roomName: string | null;
}

interface OfNeed extends Describing {
  heat: HeatOf;
}

const whole = (ml: number): number => (ml >= 100 ? Math.ceil(ml / 10) * 10 : Math.ceil(ml));

function liquids(mixture: string, ml: number): Pick<StepDetail, 'mixture' | 'solvents' | 'waste'> {
  const parts = partsOf(mixture);
  return {
    mixture,
    solvents: millilitres(parts, whole(ml)),
    waste: [{ stream: wasteOf(parts), ml: whole(ml) }],
  };
}

function washed(facts: NeedFacts, { load }: PlannedStep, settings: PrepSettings): StepDetail {
  const mixture = preWashOf(facts.need, settings);
  const plates = loadsOf(amountOf(facts), settings.tankPlates).find((each) => each.load === load)?.amount ?? 0;
  return {
    ...plainDetail,
    place: settings.tankName,
    plates,
    ...liquids(mixture, settings.tankMl),
    cautions: washCautions(partsOf(mixture), facts.need.backing ?? facts.kept[0]?.container.backing ?? null),
  };
}

function heated(facts: NeedFacts, step: PlannedStep, { ovenNames, heat: heatOf }: OfNeed): StepDetail {
  const { need, how, kept, sorbentClass } = facts;
  const isPlates = need.kind === 'PLATES';
  const { recipe } = how;
  const amount = amountOf(facts);
  const isVacuum = recipe?.vacuum ?? false;
  const heat = heatOf();
  return {
    ...plainDetail,
    place: ovenNames.get(step.ovenId ?? '') ?? 'oven',
    ovenId: step.ovenId,
    plates: isPlates ? Math.ceil(amount / step.loads) : null,
    dryGrams: isPlates ? null : amount / step.loads,
    temperatureC: recipe?.temperatureC[0] ?? null,
    minutes: heat ? five(heat.minutes[0]) : null,
    isVacuum,
    depthMm: isPlates ? null : (recipe?.depthMm ?? usualDepthMm),
    cautions: ovenCautions({
      backing: isPlates ? (kept[0]?.container.backing ?? need.backing ?? 'GLASS') : null,
      isVacuum,
      sorbentClass,
    }),
  };
}

function conditioned({ need, column, sorbentClass }: NeedFacts, { settings }: Describing): StepDetail {
  const mixture = need.mobilePhase ?? '';
  const parts = partsOf(mixture);
  return {
    ...plainDetail,
    place: settings.hoodName,
    ...(column ? liquids(mixture, column.conditioningMl) : {}),
    columnVolumes: need.columnVolumes ?? settings.conditioningVolumes,
    flowMlPerMin: column?.flowMlPerMin ?? null,
    minutes: column ? Math.ceil(column.conditioningMinutes) : null,
    cautions: [
      'wetting',
      ...solventCautions(parts),
      'pressure',
      ...(sorbentClass === 'alumina' && parts.some(({ solvent }) => solvent.formsPeroxides)
        ? ['aluminaPeroxides']
        : []),
    ],
  };
}

/** What stands beside a step. */
export function described(facts: NeedFacts, step: PlannedStep, by: OfNeed): StepDetail {
  const { need, column } = facts;
  const { settings } = by;
  const isPlates = need.kind === 'PLATES';
  const amount = { plates: isPlates ? amountOf(facts) : null, dryGrams: isPlates ? null : amountOf(facts) };
  switch (step.kind) {
    case 'PRE_WASH':
      return washed(facts, step, settings);
    case 'AIR_DRY':
      return { ...plainDetail, ...amount, place: settings.hoodName, cautions: ['solventWet'] };
    case 'OVEN':
      return heated(facts, step, by);
    case 'COOL':
    case 'KEEP':
      return { ...plainDetail, ...amount, place: settings.desiccatorName };
    case 'EQUILIBRATE': {
      const place = need.regimeHumidityPercent === null ? (by.roomName ?? 'room') : 'over the salt';
      return { ...plainDetail, ...amount, place, humidityPercent: need.regimeHumidityPercent };
    }
    case 'PACK':
      return {
        ...plainDetail,
        ...amount,
        place: settings.hoodName,
        diameterMm: column?.diameterMm ?? null,
        bedLengthMm: column?.bedLengthMm ?? null,
        cautions: ['powder'],
      };
    case 'CONDITION':
      return conditioned(facts, by);
    case 'REST':
      return { ...plainDetail, place: settings.hoodName, cautions: ['wetting'] };
    case 'HAND_OVER':
      return {
        ...plainDetail,
        ...amount,
        place: by.roomName ?? '',
        cautions: isPlates || need.kind === 'COLUMN' ? [] : ['powder'],
      };
  }
}
