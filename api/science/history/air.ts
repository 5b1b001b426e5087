// A room's air, day by day.

/** One UTC day of a room's air as 288 means of 300 s each. */
export interface DayBlocks {
  /** Days since 1970-01-01, UTC. */
  readonly day: number;
  readonly temperatureC: Float64Array;
  readonly vapourKgPerM3: Float64Array;
  readonly saturatedKgPerM3: Float64Array;
  /** 0 measured or bridged, 1 filled by the typical day, 2 nothing known (the other arrays are not read there). */
  readonly uncertain: Uint8Array;
}

/** A typical day: the same 288 means on the UTC clock, held to be uncertain wherever it is used. */
export type TypicalDay = Omit<DayBlocks, 'day' | 'uncertain'>;
