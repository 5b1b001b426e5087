// What is to be done next at an oven, and when: for the day's sentence, and on each run.
import { saidClock } from './hours.ts';
import type { RunState } from './rules.ts';

export type StepName = 'SET_OVEN' | 'LOAD' | 'TAKE_OUT' | 'COOLED' | 'RESULTS';

export interface NextStep {
  runId: string;
  what: StepName;
  at: Date;
  sentence: string;
}

export interface StepRun {
  id: string;
  state: RunState;
  ovenName: string;
  plannedStart: Date;
  plannedEnd: Date;
  setupMinutes: number;
  temperatureC: number;
  dueOutAt: Date | null;
  outAt: Date | null;
  cooledAt: Date | null;
  loads: string[];
}

const minuteMs = 60_000;

/** So many labels are said; of more, how many. */
const fewLoads = 3;
const loadWords = (loads: readonly string[]): string =>
  loads.length <= fewLoads
    ? loads.join(', ')
    : `${loads.slice(0, fewLoads - 1).join(', ')} and ${loads.length - fewLoads + 1} more`;

/** Null when nothing is left to do with it. */
export function stepOf(run: StepRun, now: Date, timeZone: string, coolDownMinutes: number): NextStep | null {
  const { id: runId, ovenName, temperatureC } = run;
  const said = (at: Date) => saidClock(at, now, timeZone);
  const loads = loadWords(run.loads);
  switch (run.state) {
    case 'PLANNED': {
      const setAt = new Date(run.plannedStart.getTime() - run.setupMinutes * minuteMs);
      if (run.setupMinutes > 0 && now < setAt) {
        return {
          runId,
          what: 'SET_OVEN',
          at: setAt,
          sentence: `${said(setAt)}: set ${ovenName} to ${temperatureC} °C`,
        };
      }
      const at = run.plannedStart;
      return { runId, what: 'LOAD', at, sentence: `${said(at)}: ${loads} into ${ovenName}, ${temperatureC} °C` };
    }
    case 'IN_OVEN': {
      const at = run.dueOutAt ?? run.plannedEnd;
      return { runId, what: 'TAKE_OUT', at, sentence: `${said(at)}: ${loads} out of ${ovenName}` };
    }
    case 'COOLING': {
      const at = new Date((run.outAt ?? run.plannedEnd).getTime() + coolDownMinutes * minuteMs);
      return { runId, what: 'COOLED', at, sentence: `${said(at)}: ${loads} cool, out of the desiccator` };
    }
    case 'COOLED': {
      const at = run.cooledAt ?? run.outAt ?? run.plannedEnd;
      return { runId, what: 'RESULTS', at, sentence: `${loads} cooled: weigh, or take the model’s figure` };
    }
    default:
      return null;
  }
}

/** The first of several; what is overdue comes first of all. */
export const earliest = (steps: readonly (NextStep | null)[]): NextStep | null =>
  steps.reduce<NextStep | null>((first, step) => (step && (!first || step.at < first.at) ? step : first), null);
