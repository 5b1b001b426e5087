// The GraphQL types of rooms and their air, by name, so that other rooms can point at them and add fields to them.
import { builder } from '../builder.ts';
import type { Import, Room, Sensor } from '../database/generated/sqlite/client.ts';

export const RoomRef = builder.objectRef<Room>('Room');
export const SensorRef = builder.objectRef<Sensor>('Sensor');
export const ImportRef = builder.objectRef<Import>('Import');
