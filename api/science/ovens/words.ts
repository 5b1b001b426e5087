// How good a plan is, in words: proven, or how much any plan could save at most.
import type { ObjectiveName } from './objective.ts';

interface Gap {
  readonly minutes: number;
  readonly relative: number;
  readonly ovenHours: number | null;
}

const percent = (share: number) => `${Math.ceil(100 * share - 1e-9)} %`;
const upMinutes = (minutes: number) => {
  const whole = Math.ceil(minutes - 1e-9);
  return whole === 1 ? '1 minute' : `${whole} minutes`;
};

function lateness(value: number, gap: Gap, provenOptimal: boolean): string {
  const onTime = value <= 1e-6;
  if (provenOptimal) return onTime ? 'on time with the fewest oven hours, proven' : 'the least lateness, proven';
  if (gap.minutes > 0) return `no plan saves more than ${upMinutes(gap.minutes)} per job`;
  const proven = onTime ? 'on time, proven' : 'the least lateness, proven';
  return gap.ovenHours === null
    ? proven
    : `${proven}; no plan on time saves more than ${percent(gap.ovenHours)} of the oven hours`;
}

export function gapWords(name: ObjectiveName, value: number, gap: Gap, provenOptimal: boolean): string {
  switch (name) {
    case 'lateness':
    case 'weighted-tardiness':
      return lateness(value, gap, provenOptimal);
    case 'weighted-completion':
    case 'max-lateness':
    case 'makespan':
      return provenOptimal ? 'the best possible, proven' : `no plan saves more than ${upMinutes(gap.minutes)}`;
    case 'late-jobs':
    case 'weighted-sum':
      return provenOptimal ? 'the best possible, proven' : `no plan is better by more than ${percent(gap.relative)}`;
  }
}
