// How long plates last in a room, as GraphQL shows it.
import { builder } from '../builder.ts';
import { RoomRef } from '../climate/refs.ts';
import { withinWords, type UseWithin } from './service.ts';
import { withinSource } from './within.ts';

export const UseWithinRef = builder.objectRef<UseWithin>('UseWithin').implement({
  description: 'How long plates last once they are taken out into a room, by the model.',
  fields: (t) => ({
    room: t.field({ type: RoomRef, description: 'In which room.', resolve: ({ room }) => room }),
    minutes: t.exposeFloat('minutes', {
      nullable: true,
      description: 'Minutes until the layer leaves its band there; 0 when it has, null when it stays in it.',
    }),
    humidityPercent: t.float({
      description: 'Relative humidity of the room’s air that was reckoned with, %.',
      resolve: ({ air }) => air.humidityPercent,
    }),
    temperatureC: t.float({ description: 'Its temperature, °C.', resolve: ({ air }) => air.temperatureC }),
    sentence: t.string({
      description: 'It in words, such as `use within 4 min in wet bench at 46 % RH`.',
      resolve: withinWords,
    }),
    source: t.string({ description: 'Where the minutes come from.', resolve: () => withinSource }),
  }),
});
