// What the prep sheet asks: its lines with all that stands beside them, what changed since it was printed, what it takes in all.
import { question } from '../ask.ts';
import { needFields, type NeedKind, type StepKind } from '../need/questions.ts';
import { flag, given, instant, many, maybe, number, text, word, type Answer } from '../shape.ts';

export type Part = 'MORNING' | 'EVENING';
export type Stream = 'HALOGENATED' | 'NON_HALOGENATED';

const printed = { sentence: text, forWhom: text, startAt: instant, endAt: instant };

const line = {
  sentence: text,
  since: maybe(word<'NEW' | 'CHANGED'>()),
  printed: maybe(printed),
  step: {
    id: text,
    kind: word<StepKind>(),
    name: text,
    load: number,
    loads: number,
    startAt: instant,
    endAt: instant,
    isAttended: flag,
    place: text,
    containers: many({ label: text }),
    plates: maybe(number),
    dryGrams: maybe(number),
    mixture: maybe(text),
    solvents: many({ solvent: text, ml: number }),
    waste: many({ stream: word<Stream>(), ml: number }),
    temperatureC: maybe(number),
    minutes: maybe(number),
    cautions: many({ key: text, text }),
    doneAt: maybe(instant),
    doneBy: maybe({ shortName: text }),
    closedBecause: maybe(text),
  },
  need: {
    id: text,
    kind: word<NeedKind>(),
    at: instant,
    forWhom: text,
    sorbent: { name: text },
    room: maybe({ name: text }),
  },
} as const;
export type SheetLine = Answer<typeof line>;
export type Step = SheetLine['step'];

const sheet = {
  on: text,
  from: instant,
  to: instant,
  printedAt: maybe(instant),
  steps: many(line),
  gone: many(printed),
  solvents: many({
    solvent: text,
    ml: number,
    formsPeroxides: flag,
    batch: maybe({ batch: text, openedOn: text, peroxideTestedOn: maybe(text) }),
  }),
  waste: many({ stream: word<Stream>(), ml: number }),
  next: maybe({ on: text, part: word<Part>() }),
} as const;
export type Sheet = Answer<typeof sheet>;

export const sheetQuestion = question<{ on: string; part: Part }>(
  'Sheet',
  '$on: String, $part: PrepPart',
)({
  lab: { name: text, prep: { eveningFrom: text } },
  prepSheet: given('on: $on, part: $part', sheet),
});

/** What of an earlier sheet was not ticked. */
export const leftQuestion = question<{ on: string; part: Part }>(
  'Left',
  '$on: String, $part: PrepPart',
)({
  prepSheet: given('on: $on, part: $part', {
    steps: many({ step: { kind: word<StepKind>(), doneAt: maybe(instant) } }),
  }),
});

/** What was to be handed over and of which nobody said so. */
export const overdueQuestion = question<{ from: string }>(
  'Overdue',
  '$from: DateTime',
)({
  needs: given('from: $from', many(needFields)),
});

/** When the evening begins. */
export const eveningQuestion = question<Record<string, never>>('Evening')({ lab: { prep: { eveningFrom: text } } });

/** Where a calendar program finds the steps. */
export const calendarQuestion = question<Record<string, never>>('Calendar')({ lab: { calendarPath: maybe(text) } });
