// The climate room's door for the other rooms.
export { addReadings } from './add-readings.ts';
export { airOf, roomAirOf, typicalDayOf } from './air.ts';
export { importFile, importReadings } from './import-readings.ts';
export { addRoom, renewDesiccant, roomNamed, setAssumedAir } from './rooms.ts';
export { setSensorAside, takeSensorBack } from './sensors.ts';
