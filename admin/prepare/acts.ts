// What is told of the steps of a prep sheet.
import { act } from '../act/told.ts';
import { flag, instant, many, maybe, number, text, word } from '../shape.ts';
import type { Part } from './questions.ts';

const ticked = { steps: many({ id: text }), notes: many(text) } as const;

export const tickStepAct = act(
  'tickStep',
  'StepsTicked',
  {
    id: text,
    at: maybe(instant),
    note: maybe(text),
    vessel: maybe(text),
    waterFraction: maybe(number),
    temperatureC: maybe(number),
    minutes: maybe(number),
  },
  ticked,
);
export const tickStepsAct = act(
  'tickSteps',
  'StepsTicked',
  { ids: many(text), except: maybe(many(text)), at: maybe(instant), asPlanned: maybe(flag), note: maybe(text) },
  ticked,
);
export const untickStepsAct = act('untickSteps', 'StepsTicked', { ids: many(text) }, ticked);
export const notePrintedAct = act('notePrinted', 'PrintNoted', { on: text, part: maybe(word<Part>()) }, { on: text });
export const renewCalendarAct = act('renewCalendarAddress', 'PrepSettingsKept', {}, { lab: { name: text } });
