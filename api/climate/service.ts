// The climate room's door for the other rooms.
export { addReadings } from './add-readings.ts';
export { airOf, roomAirOf, typicalDayOf } from './air.ts';
export { importFile, importReadings } from './import-readings.ts';
export { renewDesiccant } from './room-renewal.ts';
export { airAt, airNow, airsIn, type AirNow } from './now.ts';
export { addRoom, roomNamed, setAssumedAir } from './rooms.ts';
export { madeRoom } from './room-made.ts';
export { setSensorAside, takeSensorBack } from './sensors.ts';
// How files, days and zones are told, for whoever else reads what people bring.
export type { DateOrder } from './logger/file.ts';
export { dividedStamp } from './logger/cell.ts';
export { kindOf } from './logger/kind.ts';
export { dateOrderOf, midnightOf } from './logger/order.ts';
export { dateOf, type WrittenDate } from './logger/stamp.ts';
export { textOf } from './logger/text.ts';
export { wallClock, zoneNamed } from './logger/zone.ts';
