// What a plan before this one said of each job, and how much it costs to depart from it.

export interface Kept {
  /** The oven of each job, -1 where the plan before did not have it. */
  readonly oven: Int32Array;
  readonly start: Int32Array;
}

/** Another oven counts more than another time there; a long shift more than a short one. */
const otherOven = 2000;
const otherTime = 1000;
const mostShift = 600;

/** In oven minutes, so that no saving of oven time pays for moving a job. */
export function departure(kept: Kept, job: number, oven: number, start: number): number {
  const before = kept.oven[job]!;
  if (before < 0) return 0;
  if (before !== oven) return otherOven;
  const shift = Math.abs(start - kept.start[job]!);
  return shift === 0 ? 0 : otherTime + Math.min(shift, mostShift);
}
