// The fold: a container's history and its rooms' air become its exposure, from the start or from a checkpoint.
//
// Stepping stops at fixed instants only (00:00 UTC, events, the ends of a scoop's opening and of working hours), and between
// two of them it aims at the later one. So the digits there do not depend on when somebody asks, and a rebuild gives the
// same bits as going on from a checkpoint. The last piece, up to the instant asked for, is thrown away.
import { bedCells } from './grid.ts';
import type { Bed } from './bed.ts';
import { decode, encode, worthKeeping } from './checkpoint.ts';
import { daySeconds } from './climate.ts';
import { begin, type Condition } from './condition.ts';
import { apply, type Departure } from './events.ts';
import { nextTurn } from './habit.ts';
import type { Checkpoint, FoldInput, FoldOutput } from './history.ts';
import { judge } from './judge.ts';
import { usualPace, firstStepS, type Pace } from './stepper.ts';
import { carryTo } from './stretch.ts';

/** Instants to stop at besides, in order, and who is told there (before an event of that instant); for plots. */
export interface Visits {
  readonly instantsS: readonly number[];
  readonly told: (condition: Condition) => void;
}

export interface Course {
  readonly condition: Condition;
  readonly checkpoints: readonly Checkpoint[];
  readonly departures: readonly Departure[];
}

/** Carries a history to `asOfS` without judging it. */
export function courseOf(input: FoldInput, visits: Visits | null = null, pace: Pace = usualPace): Course {
  const { spec, start, actions, airs, asOfS, factors } = input;
  const condition = input.checkpoint ? decode(input.checkpoint, spec, factors) : begin(spec, start, factors);
  const checkpoints: Checkpoint[] = [];
  const departures: Departure[] = [];
  let next = 0;
  let visited = 0;
  const arrive = (): void => {
    const atS = condition.atS;
    let acted = false;
    for (let action = actions[next]; action && action.atS <= atS; action = actions[++next]) {
      const departure = apply(condition, spec, action, airs.get(condition.room));
      if (departure) departures.push(departure);
      acted = true;
    }
    if (!acted && atS % daySeconds !== 0) condition.bed.stepS = Math.min(condition.bed.stepS, firstStepS);
    if (atS % daySeconds === 0) dropSpent(condition.bed);
    if ((acted || atS % daySeconds === 0) && worthKeeping(atS, asOfS)) checkpoints.push(encode(condition));
  };
  if (input.checkpoint) {
    const { atS } = condition;
    while (next < actions.length && actions[next]!.atS <= atS) next++;
  } else arrive();
  const visit = (): void => {
    for (; visits && visits.instantsS[visited]! <= condition.atS; visited++) visits.told(condition);
  };
  visit();
  while (condition.atS < asOfS) {
    const { atS } = condition;
    const fixed = Math.min(
      (Math.floor(atS / daySeconds) + 1) * daySeconds,
      actions[next]?.atS ?? Infinity,
      condition.shutsAtS > atS ? condition.shutsAtS : Infinity,
      nextTurn(condition.habit, atS),
    );
    const stop = Math.min(fixed, asOfS, visits?.instantsS[visited] ?? Infinity);
    carryTo(condition, spec, airs.get(condition.room), stop, factors, pace);
    visit();
    if (stop === fixed) arrive();
  }
  return { condition, checkpoints, departures };
}

/** The exposure at `asOfS`, the checkpoints passed on the way, and what left the container. */
export function foldExposure(input: FoldInput): FoldOutput {
  const { condition, checkpoints, departures } = courseOf(input);
  return {
    answer: judge(condition, input),
    checkpoints,
    handovers: departures,
    waterGainedKg: condition.gainedKg,
    steps: condition.bed.steps,
  };
}

/** Responses that have faded to nothing are dropped at midnights, and stepping gets cheaper again. */
const spent = 1e-10;

function dropSpent(bed: Bed): void {
  const kept = bed.rows
    .map((_, row) => row)
    .filter((row) => {
      const values = bed.responses.subarray(row * bedCells, (row + 1) * bedCells);
      return values.some((value) => Math.abs(value) > spent);
    });
  if (kept.length === bed.rows.length) return;
  const responses = new Float64Array(kept.length * bedCells);
  kept.forEach((row, to) => responses.set(bed.responses.subarray(row * bedCells, (row + 1) * bedCells), to * bedCells));
  bed.rows = kept.map((row) => bed.rows[row]!);
  bed.responses = responses;
}
