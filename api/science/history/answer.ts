// What is said of a container at an instant.
import type { State } from './band.ts';

export interface Answer {
  readonly asOfS: number;
  readonly state: State;
  /** kg water per kg dry sorbent; the range is the 90 % interval. All NaN never occurs: unknown stock shows the assumed course. */
  readonly meanWaterFraction: number;
  readonly low: number;
  readonly high: number;
  readonly scoopWaterFraction: number;
  readonly scoopLow: number;
  readonly scoopHigh: number;
  readonly topWaterFraction: number;
  /** P(next scoop past the upper end); for plates and columns P(mean past it). Null without an upper end. */
  readonly chancePastLimit: number | null;
  readonly chanceTooDry: number | null;
  /** To the crossing of the band by the median, as it stands, if open, if closed; 0 when past, null beyond 90 days. */
  readonly hoursToLimit: number | null;
  readonly hoursToLimitOpen: number | null;
  readonly hoursToLimitClosed: number | null;
  readonly reason: string;
  /** Activity grade I to V, null where no table exists for the class or none was asked for. */
  readonly grade: string | null;
  /** How deep the bed is past the upper end, from the top. */
  readonly pastLimitDepthM: number | null;
  /** Plates only: minutes in room air until within a twentieth of equilibrium. */
  readonly minutesToRoomEquilibrium: number | null;
  /** Some place holds more than 95 % RH would give: the number is a lower bound. */
  readonly condensing: boolean;
  readonly isOpen: boolean;
  readonly openedAtS: number | null;
  readonly dryKg: number;
  readonly plates: number;
  readonly profile: readonly { readonly depthM: number; readonly waterFraction: number }[];
}
