// An estimate as the row that is stored and listed.
import type { ExposureRow } from '../database/exposures.ts';
import type { FleetContainer } from '../database/fleet.ts';
import { meanAir, type RoomAir } from '../science/climate.ts';
import type { Answer, FoldInput, Target } from '../science/history.ts';
import { urgencyOf } from './urgency.ts';

/** The stretch over which the share of filled-in air is told, s. */
export const airWindowS = 30 * 86_400;

const none = {
  meanWaterFraction: null,
  low: null,
  high: null,
  scoopWaterFraction: null,
  scoopLow: null,
  scoopHigh: null,
  topWaterFraction: null,
  chancePastLimit: null,
  hoursToLimit: null,
  hoursToLimitOpen: null,
  hoursToLimitClosed: null,
  grade: null,
  minutesToRoomEquilibrium: null,
  uncertainAirFraction: null,
} as const;

const common = (container: FleetContainer, labId: string, asOfMs: number, target: Target) => ({
  containerId: container.id,
  labId,
  asOf: asOfMs,
  staleFrom: null,
  version: container.version ?? 0,
  upperWaterFraction: target.upper,
  lowerWaterFraction: target.lower,
});

/** Where no estimate can be made: unknown, and why. */
export function unknownRow(
  container: FleetContainer,
  labId: string,
  asOfMs: number,
  target: Target,
  reason: string,
): ExposureRow {
  const urgency = urgencyOf('UNKNOWN', null);
  return { ...common(container, labId, asOfMs, target), ...none, state: 'UNKNOWN', urgency, reason };
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

const shares = new WeakMap<RoomAir, { asOfS: number; share: number | null }>();

/** Share of the room's air before an instant that was filled in; the same for all its containers. */
function filledShare(air: RoomAir, asOfS: number): number | null {
  const known = shares.get(air);
  if (known?.asOfS === asOfS) return known.share;
  const share = finite(meanAir(air, Math.max(asOfS - airWindowS, 0), asOfS).filled);
  shares.set(air, { asOfS, share });
  return share;
}

/** What the estimator answered. */
export function answerRow(
  container: FleetContainer,
  labId: string,
  asOfMs: number,
  input: FoldInput,
  answer: Answer,
): ExposureRow {
  const air = input.airs.get(container.roomId);
  return {
    ...common(container, labId, asOfMs, input.target),
    state: answer.state,
    urgency: urgencyOf(answer.state, answer.hoursToLimit),
    meanWaterFraction: finite(answer.meanWaterFraction),
    low: finite(answer.low),
    high: finite(answer.high),
    scoopWaterFraction: finite(answer.scoopWaterFraction),
    scoopLow: finite(answer.scoopLow),
    scoopHigh: finite(answer.scoopHigh),
    topWaterFraction: finite(answer.topWaterFraction),
    chancePastLimit: answer.chancePastLimit,
    hoursToLimit: answer.hoursToLimit,
    hoursToLimitOpen: answer.hoursToLimitOpen,
    hoursToLimitClosed: answer.hoursToLimitClosed,
    grade: answer.grade,
    minutesToRoomEquilibrium: answer.minutesToRoomEquilibrium,
    uncertainAirFraction: air ? filledShare(air, answer.asOfS) : null,
    reason: answer.reason,
  };
}
