// The band the water should lie in, and when a state is called by its name.

/** The band the water should lie in; null where the band has no such end. */
export interface Target {
  readonly upper: number | null;
  readonly lower: number | null;
  /** `equilibrated`: the band is water at a humidity and moves with the sorbent's capacity, whose doubt therefore cancels. */
  readonly policy: 'dry' | 'as received' | 'set' | 'equilibrated';
}

/** The lab's four figures. */
export interface Thresholds {
  readonly redryChance: number;
  readonly useSoonChance: number;
  readonly useSoonHours: number;
  readonly tooDryChance: number;
}

export type State = 'GOOD' | 'USE_SOON' | 'REDRY' | 'TOO_DRY' | 'UNKNOWN';
