// What the planner is told: a need as a chain of stages, and what there is to do it with. Minutes and plain numbers.
import type { Interval } from './intervals.ts';

export type StepKind =
  'PRE_WASH' | 'AIR_DRY' | 'OVEN' | 'COOL' | 'KEEP' | 'EQUILIBRATE' | 'PACK' | 'CONDITION' | 'REST' | 'HAND_OVER';

/** One tank or oven load: its number, counted from 1, and how much of the tank, hood or oven it takes. */
export interface Load {
  readonly load: number;
  readonly amount: number;
}

/** Loads through the tank, then all of them in the hood until somebody takes them out. */
export interface WashStage {
  readonly kind: 'WASH';
  readonly loads: readonly Load[];
  /** All loads there were, done ones too. */
  readonly ofLoads: number;
  readonly minutes: number;
  /** Somebody's hands at the beginning of each. */
  readonly handsMinutes: number;
  /** The least in the hood. */
  readonly airDryMinutes: number;
}

/** Into an oven: loaded and taken out when somebody is there, then cooled. */
export interface OvenStage {
  readonly kind: 'OVEN';
  readonly loads: readonly Load[];
  readonly ofLoads: number;
  readonly least: number;
  readonly most: number;
  readonly temperatureC: readonly [number, number];
  /** Null: either will do. */
  readonly isVacuum: boolean | null;
  /** Ids of those in which it gets ready in that time; absent: in all. */
  readonly ovens?: readonly string[];
  readonly handsMinutes: number;
  readonly coolMinutes: number;
  /** Where and when it goes in already, by load: an oven run that stands. */
  readonly given?: readonly { load: number; ovenId: string; start: number; end: number }[];
}

/** Something that begins when somebody is there and then goes on by itself. */
export interface StandStage {
  readonly kind: 'EQUILIBRATE';
  readonly minutes: number;
  readonly handsMinutes: number;
}

/** Something that somebody does from its beginning to its end; then it rests. */
export interface WorkStage {
  readonly kind: 'PACK' | 'CONDITION' | 'HAND_OVER';
  readonly minutes: number;
  readonly restMinutes: number;
}

export type Stage = WashStage | OvenStage | StandStage | WorkStage;

export interface PrepNeed {
  readonly id: string;
  readonly at: number;
  /** 1, 2, 4 or 8: heavier ones choose first. */
  readonly weight: number;
  /** Nothing of it can begin before: now, or the end of what is going on. */
  readonly floor: number;
  /** Something goes on until `floor` and what comes then waits in the desiccator. */
  readonly keepsFrom: number | null;
  readonly stages: readonly Stage[];
  /** What it takes already, of steps that were begun. */
  readonly takes: readonly { of: 'tank' | 'hood'; from: number; to: number; amount: number }[];
}

export interface PrepOven {
  readonly id: string;
  /** When someone can load it or take out. */
  readonly open: readonly Interval[];
  /** What runs in it, and when it is out of order. */
  readonly busy: readonly Interval[];
  readonly capacity: number;
  /** Free above a shelf, mm, which says whether plates stand in racks; where nobody said, they lie flat. */
  readonly shelfHeightMm?: number;
  readonly temperatureC: readonly [number, number];
  readonly isVacuum: boolean;
  /** It may run while nobody is there. */
  readonly isUnattended: boolean;
}

export interface PrepResources {
  /** When somebody works. */
  readonly open: readonly Interval[];
  /** People at once. */
  readonly hands: number;
  readonly tanks: number;
  /** Plates that can air-dry at once. */
  readonly hoodPlaces: number;
  readonly ovens: readonly PrepOven[];
}

export interface PlannedStep {
  readonly kind: StepKind;
  readonly load: number;
  readonly loads: number;
  readonly start: number;
  readonly end: number;
  /** Somebody is there from its start to its end. */
  readonly isAttended: boolean;
  readonly ovenId: string | null;
}
