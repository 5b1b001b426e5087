// What a forecast tells.
import type { Crossing, Moment } from '../science/tray/forecast.ts';
import type { Limit } from '../science/tray/limits.ts';
import type { OvenWords } from './forecast-words.ts';
import type { LabRecipe } from './recipes.ts';

export interface DryingForecast {
  readonly recipe: LabRecipe | null;
  readonly oven: OvenWords & { readonly pressureMbar: number };
  readonly depthMm: number | null;
  readonly minutes: number;
  readonly startWaterFraction: number;
  readonly startFrom: 'GIVEN' | 'ESTIMATE' | 'ROOM_AIR';
  readonly target: number;
  /** What the oven never takes out, and that in a sentence. */
  readonly floor: number;
  readonly floorSentence: string;
  /** At a time that is 30 % too short, at the time itself, at one that is 30 % too long. */
  readonly moments: readonly [sooner: Moment, now: Moment, later: Moment];
  readonly crossing: Crossing;
  readonly notes: readonly string[];
  deepestMm(): number | null;
  limit(): Limit | null;
  summary(): string;
}
