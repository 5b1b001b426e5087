// What can be told of a container, by the verb of the event.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { corrected, correctSaid } from './correct.ts';
import { acts, told, type ActName } from './event.ts';
import {
  columnPacked,
  combined,
  combineSaid,
  packColumnSaid,
  platesTaken,
  portionTaken,
  takePlatesSaid,
  takePortionSaid,
} from './fill.ts';
import {
  amountFields,
  actFields,
  both,
  correctionFields,
  eventFields,
  filledFields,
  shapeFields,
  takingFields,
} from './inputs.ts';
import { PackingMethodEnum } from './enums.ts';
import { fresh } from './fresh.ts';
import type { Recorded } from './record.ts';
import { ContainerRef, EventRef, there } from './refs.ts';

export const RecordedRef = builder.objectRef<Recorded>('Recorded').implement({
  description: 'An event was recorded.',
  fields: (t) => ({
    event: t.field({
      type: EventRef,
      description: 'The event.',
      resolve: async ({ eventId }, _, { load }) => there(await load.event.load(eventId), 'event'),
    }),
    container: t.field({
      type: ContainerRef,
      description: 'The container it happened to, as it stands now.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    made: t.field({
      type: ContainerRef,
      nullable: true,
      description: 'The container that was made, packed or filled by it; null when there is none.',
      resolve: ({ madeId }, _, { load }) => (madeId ? load.container.load(madeId) : null),
    }),
    notes: t.exposeStringList('notes', {
      description: 'What disagreed with the book and was kept all the same, each in one sentence.',
    }),
  }),
});

const descriptions: Record<ActName, string> = {
  openContainer: 'It was opened, and stands open until it is closed.',
  closeContainer: 'It was closed. Closing twice is no harm.',
  moveContainer: 'It was moved to another room.',
  mixContainer: 'It was mixed or rolled, so that its water is even.',
  recordDrying:
    'It was dried: by a recipe, or to a measured water content. Answers what waits for it on the list to dry.',
  recordEquilibration: 'It stood over a salt or in air of one humidity until nothing changed.',
  recordWeighing: 'Its water was measured, of the whole or of a scoop.',
  recordCount:
    'What is there was counted: grams on the balance, plates, or the gross weight with a known tare. The book follows.',
  recordLoss: 'Some of it was lost.',
  recordSolvent: 'It touched solvent or sample: from then on it is kept out of the oven.',
  preWash: 'A whole box of plates was pre-washed, and is wet with solvent until recordSolventGone.',
  solventGone: 'The solvent of the pre-wash is gone.',
  recordSolventGone:
    'The solvent is gone from plates that were wet with it. Refused before the lab’s least hours in the hood, and it says from when on. By time and airflow, never by smell.',
  conditionColumn:
    'A column was wetted with its mobile phase: 2 to 3 column volumes are the practice; other amounts are kept and marked. Of flow and minutes, column volumes follow when they are not given.',
  interrupt: 'What was being done with a column or plates was interrupted.',
  recordNotFound: 'It was looked for and not found. The book keeps it as it was, until somebody says more.',
  spendOnCheck: 'Some of it was spent on a check.',
  setHabit: 'How often it is opened on a working day, from then on; 0 times ends the habit.',
  setScooping: 'How one scoops from it, from then on.',
  finishContainer: 'It was used up.',
  discardContainer: 'Some or (without an amount) all of it was discarded.',
};

/** What a newer name replaces. */
const replacedBy: Partial<Record<ActName, string>> = {
  preWash: 'Use prewashPlates, which can take some of a box and says more.',
  solventGone: 'Use recordSolventGone, which says who saw to it.',
};

for (const name of Object.keys(acts) as ActName[]) {
  addMutation(name, {
    description: descriptions[name],
    deprecationReason: replacedBy[name],
    fields: actFields[name],
    check: acts[name].said as never,
    success: RecordedRef,
    run: (input: never, context) => fresh(context, told(context, name, input)),
  });
}

addMutation('takePortion', {
  description:
    'A portion was poured out. With a vessel it becomes a container of its own; without, it was used at once. The lid was off for about five minutes.',
  fields: both(eventFields, amountFields, takingFields, filledFields, shapeFields),
  check: takePortionSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, portionTaken(context, input)),
});

addMutation('takePlates', {
  description: 'Plates were taken into a box of their own, which knows where they came from.',
  fields: both(eventFields, takingFields, filledFields, (t) => ({
    plates: t.int({ required: true, description: 'Plates taken.' }),
  })),
  check: takePlatesSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, platesTaken(context, input)),
});

addMutation('packColumn', {
  description: 'A column was packed from it: with so many grams, or what its bed holds at the bulk density.',
  fields: both(eventFields, amountFields, takingFields, filledFields, (t) => ({
    innerDiameterMm: t.float({ required: true, description: 'Inner diameter of the column, mm.' }),
    bedLengthMm: t.float({ required: true, description: 'Length of the bed when it was done, mm.' }),
    tareGrams: t.float({ description: 'Weight of the empty column, g.' }),
    method: t.field({ type: PackingMethodEnum, description: 'Packed dry or as a slurry.' }),
    tapping: t.string({ description: 'How it was tapped or settled, such as `100 taps`.' }),
    flowMlPerMin: t.float({ description: 'Flow that the bed was settled at, mL/min.' }),
    pressureBar: t.float({ description: 'Pressure that the bed was settled at, bar.' }),
    packer: t.string({ description: 'Who packed it.' }),
    dyeTest: t.string({ description: 'What a dye or another test of the packing showed.' }),
  })),
  check: packColumnSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, columnPacked(context, input)),
});

addMutation('combineContainers', {
  description: 'It was emptied into another container of the same lot: trays back into one jar.',
  fields: both(eventFields, amountFields, (t) => ({
    into: t.string({ required: true, description: 'Label of the container it was emptied into.' }),
  })),
  check: combineSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, combined(context, input)),
});

addMutation('correctEvent', {
  description:
    'Corrects an event: with what was so instead, or void when it did not happen. Nothing is edited: both stay on the timeline. Void on a correction takes the correction back; void on that brings it again.',
  fields: correctionFields,
  check: correctSaid,
  success: RecordedRef,
  run: (input, context) => fresh(context, corrected(context, input)),
});
