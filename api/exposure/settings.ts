// What a lab can set about its estimates; all of it has an invented default, shown as such.
import { z } from 'zod';
import { standardPressurePa } from '../science/air.ts';
import { stillAirMPerS } from '../science/closures.ts';
import type { Thresholds } from '../science/history.ts';
import { usualThresholds } from '../science/judge.ts';
import { type WorkingHours, workingHoursOf } from './hours.ts';

const chance = z.number().min(0).max(1);
export const choices = z
  .object({
    redryChance: chance,
    useSoonChance: chance,
    useSoonHours: z.number().min(0),
    tooDryChance: chance,
    /** The scoop that states are judged on, g. */
    scoopGrams: z.number().positive(),
    /** Depth of the reported top layer, mm. */
    topMm: z.number().positive(),
    /** Mass transfer at an open mouth, mm/s: 3 in still room air, 8 to 15 in a hood's draught. */
    filmMmPerS: z.number().positive(),
    /** Air pressure at the lab's height, Pa. */
    pressurePa: z.number().min(50_000).max(110_000),
    /** Equilibrated plates are good while the air stays within so much of theirs, % RH either side. */
    equilibratedBandPercent: z.number().positive(),
  })
  .partial();

/** What counts where the lab has set nothing: invented defaults, but for the film and the pressure. */
export const usualSettings = {
  ...usualThresholds,
  scoopGrams: 50,
  topMm: 10,
  filmMmPerS: 1000 * stillAirMPerS,
  pressurePa: standardPressurePa,
  equilibratedBandPercent: 5,
} as const;

export interface EstimateSettings {
  readonly thresholds: Thresholds;
  readonly scoopKg: number;
  readonly topM: number;
  readonly filmMPerS: number;
  readonly pressurePa: number;
  readonly hours: WorkingHours;
  /** Either side of an equilibration, 0 to 1 of relative humidity. */
  readonly equilibratedBand: number;
}

/** Of a lab's `settings`; what is missing there, or is none of these, has its default. */
export function estimateSettingsOf(settings: unknown, timeZone: string): EstimateSettings {
  const read = choices.safeParse(settings);
  const set = read.success ? read.data : {};
  return {
    thresholds: {
      redryChance: set.redryChance ?? usualThresholds.redryChance,
      useSoonChance: set.useSoonChance ?? usualThresholds.useSoonChance,
      useSoonHours: set.useSoonHours ?? usualThresholds.useSoonHours,
      tooDryChance: set.tooDryChance ?? usualThresholds.tooDryChance,
    },
    scoopKg: (set.scoopGrams ?? usualSettings.scoopGrams) / 1000,
    topM: (set.topMm ?? usualSettings.topMm) / 1000,
    filmMPerS: set.filmMmPerS === undefined ? stillAirMPerS : set.filmMmPerS / 1000,
    pressurePa: set.pressurePa ?? standardPressurePa,
    hours: workingHoursOf(settings, timeZone),
    equilibratedBand: (set.equilibratedBandPercent ?? usualSettings.equilibratedBandPercent) / 100,
  };
}
