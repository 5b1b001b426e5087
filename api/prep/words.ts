// Steps in words: what is done, with what, how much. Short, as they stand on the sheet.
import type { PrepStep } from '../database/generated/sqlite/client.ts';
import { grams, words } from '../stock/service.ts';
import { detailOf, type StepDetail } from './detail.ts';

const titles: Record<PrepStep['kind'], string> = {
  PRE_WASH: 'pre-wash',
  AIR_DRY: 'air-dry',
  OVEN: 'oven',
  COOL: 'cool',
  KEEP: 'keep dry',
  EQUILIBRATE: 'equilibrate',
  PACK: 'pack',
  CONDITION: 'condition',
  REST: 'rest',
  HAND_OVER: 'hand over',
};

type Named = Pick<PrepStep, 'kind' | 'load' | 'loads'>;

/** A step's name: `pre-wash, load 2 of 3`. */
export const labelOf = ({ kind, load, loads }: Named): string =>
  loads > 1 ? `${titles[kind]}, load ${load} of ${loads}` : titles[kind];

const amountIn = ({ plates, dryGrams }: StepDetail): string =>
  plates !== null ? words.plates(plates) : dryGrams !== null ? `${grams(dryGrams)} (dry)` : '';

const round = (value: number): string => String(Number(value.toPrecision(2)));

function tail({ kind }: Named, detail: StepDetail): string {
  const { mixture, temperatureC, minutes, isVacuum, depthMm, humidityPercent } = detail;
  const ml = detail.solvents.reduce((sum, each) => sum + each.ml, 0);
  switch (kind) {
    case 'PRE_WASH':
      return `full length in ${Math.round(ml)} mL ${mixture ?? ''}`;
    case 'AIR_DRY':
      return 'until the solvent is gone, by time';
    case 'OVEN':
      return [
        temperatureC === null ? '' : `${temperatureC} °C`,
        minutes === null ? '' : `${minutes} min in the oven`,
        isVacuum ? 'vacuum' : '',
        depthMm === null ? '' : `at most ${depthMm} mm deep`,
      ]
        .filter(Boolean)
        .join(', ');
    case 'EQUILIBRATE':
      return humidityPercent === null
        ? 'in the room, face up'
        : `over a saturated salt at ${round(humidityPercent)} % RH`;
    case 'PACK':
      return `${round(detail.diameterMm ?? 0)} × ${round(detail.bedLengthMm ?? 0)} mm, dry, tapping`;
    case 'CONDITION':
      return `${round(detail.columnVolumes ?? 0)} column volumes, ${Math.round(ml)} mL ${mixture ?? ''} at ${round(detail.flowMlPerMin ?? 0)} mL/min`;
    case 'REST':
      return 'until heat and bubbles are gone';
    default:
      return '';
  }
}

/** The step in one sentence, without its time and place. */
export function sayStep(step: Named & { detail: unknown }, who: string): string {
  const detail = detailOf(step.detail);
  const name = labelOf(step);
  const head = [`${name[0]?.toUpperCase()}${name.slice(1)}`, amountIn(detail)].filter(Boolean).join(': ');
  const rest = step.kind === 'HAND_OVER' ? `to ${who}` : tail(step, detail);
  return rest ? `${head}, ${rest}` : head;
}
