// The climate room's door for the other rooms.
export { addReadings } from './add-readings.ts';
export { airOf, roomAirOf, typicalDayOf } from './air.ts';
export { importFile, importReadings } from './import-readings.ts';
export { renewDesiccant } from './room-renewal.ts';
export { addRoom, roomNamed, setAssumedAir } from './rooms.ts';
export { setSensorAside, takeSensorBack } from './sensors.ts';
