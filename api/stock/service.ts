// What other rooms may use of the stock.
export { bandOf, bandSaid } from './catalogue-band.ts';
export { takenBack } from './correct.ts';
export { lotNamed } from './catalogue-mend.ts';
export { bookedMany, shapeOfVessel, takenBackMany, type Arrival } from './book-many.ts';
export { commonVesselsAdded, knownClasses } from './catalogue.ts';
export { details, habit, saidOf, type DetailOf, type EventType, type Habit, type Said } from './details.ts';
export { storedCarried } from './carried.ts';
export { closureAfterScoop, ovenCaution } from './effects.ts';
export { containerOf, personOf, sorbentOf, supplierOf } from './find.ts';
export { columnFilled, packColumnSaid, platesMoved, portionPoured, takePlatesSaid, takePortionSaid } from './fill.ts';
export { cameIn, mostAlike, receiveSaid } from './receive.ts';
export { happened } from './happen.ts';
export { inOvenKept, inOvenOf, inOvenSaid } from './in-oven.ts';
export { leastHoodHoursOf, leastHoodHoursSaid, usualLeastHoodHours } from './hood.ts';
export { directions, frontEdges, goneFromMs, prepared, regimeColumns, type Prepared } from './prepared.ts';
export {
  campaignLetGo,
  campaignShares,
  freeDryGrams,
  freePlates,
  heldOn,
  holdMade,
  holdsMade,
  needLetGo,
  shareLeft,
} from './hold.ts';
export { gradeTableFor, tablesNow, type GradeTable } from './grade-tables.ts';
export { globalId, localId } from './ids.ts';
export { bulkDensityName, propertyNames } from './properties.ts';
export { checkNotFuture, isAhead, onRecorded, type Recorded } from './record.ts';
export { madeSorbent, madeSupplier, madeVessel } from './named-anew.ts';
export { plateShape, shapeless, type Shape } from './made.ts';
export { eventInput, said } from './said.ts';
export { nothingGrams, type Entry, type Stand } from './stand.ts';
export { baseOf, dryGramsPerPlate, entryOf, standing, timelineOf } from './timeline.ts';
export { standAt } from './rules.ts';
export { commonVessels } from './vessels.ts';
export { labelMeant } from './label.ts';
export { weighingSaid } from './weighing.ts';
export { certificateWater, onWater, waterAt, type Water } from './water.ts';
export { grams, percent, words } from './words.ts';
