// What other rooms may ask of lots: how they stand, and which were rejected.
export { ownGradeOf } from './grade-tables.ts';
export { lotStandings, rejectedLots, type LotStanding, type Standing } from './standing.ts';
