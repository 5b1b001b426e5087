// What prepared plates are good for, from how they stand. Pure; words as they are read out.
import type { ExposureState, PlateRegime } from '../database/generated/sqlite/client.ts';
import type { Stand } from '../stock/stand.ts';

export const batchStates = ['WET', 'DRYING', 'DRY', 'ACTIVATED', 'EQUILIBRATED'] as const;
export type BatchState = (typeof batchStates)[number];

/** The columns that tell it. */
export interface Stands {
  wettedAt: Date | null;
  hoodAt: Date | null;
  regime: PlateRegime | null;
  touchedSolventAt: Date | null;
}

/** Null for plates that nothing was done to. */
export function batchState({ wettedAt, hoodAt, regime, touchedSolventAt }: Stands, now: Date): BatchState | null {
  if (wettedAt) return hoodAt && hoodAt <= now ? 'DRYING' : 'WET';
  if (regime === 'EQUILIBRATED') return 'EQUILIBRATED';
  if (regime === 'DRY_UNTIL_SPOTTED') return 'ACTIVATED';
  return touchedSolventAt ? 'DRY' : null;
}

export function regimeWords(regime: PlateRegime, humidityPercent: number | null): string {
  if (regime === 'DRY_UNTIL_SPOTTED') return 'dry until spotted';
  return `equilibrated at ${Math.round(humidityPercent ?? 0)} % RH`;
}

export interface Use {
  extraction: boolean;
  why: string;
}

/** Plates for an extraction are washed with its own mobile phase, full length, their dirty edge out of the way. */
export function useOf(of: Stand['prepared'], isWet: boolean): Use {
  const no = (why: string): Use => ({ extraction: false, why });
  const wash = of?.preWash;
  if (isWet) return no('wet with solvent');
  if (!wash) return no('not pre-washed');
  if (!wash.isMobilePhase) {
    return no(`pre-washed with ${wash.solvent ?? 'something else'}, not with the mobile phase of the extraction`);
  }
  if (wash.fullLength !== true) return no('the pre-wash did not run the full length of the plate');
  if (wash.frontEdge === 'LEFT') return no('its dirty front edge was left on');
  if (wash.frontEdge === null) return no('nobody said what became of its dirty front edge');
  const edge = wash.frontEdge === 'CUT' ? 'front edge cut off' : 'nothing beyond the mark at its front';
  const way = wash.direction === 'ALONG_WIDTH' ? ', developed along the width' : '';
  return { extraction: true, why: `extraction with ${wash.solvent ?? 'its mobile phase'}${way}; ${edge}` };
}

/** Whether they are ready, and why not. */
export function readiness(
  regime: PlateRegime | null,
  state: ExposureState | null,
  plates: number,
): { ready: boolean; why: string } {
  if (plates === 0) return { ready: false, why: 'none is left' };
  if (regime === null) return { ready: false, why: 'neither activated nor equilibrated' };
  if (state === 'GOOD' || state === 'USE_SOON') return { ready: true, why: '' };
  if (state === 'REDRY') {
    return {
      ready: false,
      why:
        regime === 'EQUILIBRATED' ? 'the air was too wet since: equilibrate again' : 'too wet by now: activate again',
    };
  }
  if (state === 'TOO_DRY') return { ready: false, why: 'the air was too dry since: equilibrate again' };
  return { ready: false, why: 'how wet they are is not known: weigh first' };
}

/** Wet first, then drying, dry and ready; among the ready those that end first. */
export function byWhatToDo(
  one: { state: BatchState; goodUntilMs: number | null; label: string },
  other: { state: BatchState; goodUntilMs: number | null; label: string },
): number {
  const state = batchStates.indexOf(one.state) - batchStates.indexOf(other.state);
  const until = (one.goodUntilMs ?? Infinity) - (other.goodUntilMs ?? Infinity);
  return state || (Number.isNaN(until) ? 0 : until) || one.label.localeCompare(other.label);
}
