// The climate room's door for the other rooms.
export { addReadings } from './add-readings.ts';
export { airOf, roomAirOf, typicalDayOf } from './air.ts';
export { addRoom, roomNamed } from './rooms.ts';
