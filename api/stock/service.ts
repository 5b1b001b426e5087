// What other rooms may use of the stock.
export { bandOf, bandSaid, type Band } from './catalogue-band.ts';
export { lotNamed } from './catalogue-mend.ts';
export { commonVesselsAdded, knownClasses } from './catalogue.ts';
export { details, habit, saidOf, type DetailOf, type EventType, type Habit, type Said } from './details.ts';
export { closureAfterScoop, ovenCaution } from './effects.ts';
export { containerOf, sorbentOf } from './find.ts';
export { freeDryGrams, freePlates } from './hold.ts';
export { localId } from './ids.ts';
export { propertyNames } from './properties.ts';
export { checkNotFuture, onRecorded, type Recorded } from './record.ts';
export { said } from './said.ts';
export { nothingGrams, type Entry, type Stand } from './stand.ts';
export { baseOf, dryGramsPerPlate, entryOf, standing, timelineOf } from './timeline.ts';
export { standAt } from './rules.ts';
export { onWater, waterAt, type Water } from './water.ts';
export { grams, percent, words } from './words.ts';
