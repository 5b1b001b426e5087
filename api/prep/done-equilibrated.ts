// Equilibrated: over the salt that the need asks for, else in the air of the room as it was then.
import { airAt } from '../climate/service.ts';
import { happened } from '../stock/service.ts';
import { type Doing, eachKept } from './doing.ts';

/** Where nobody said and nothing is known of the air. */
const usualHumidityPercent = 50;
const usualTemperatureC = 22;

export async function equilibrated(doing: Doing): Promise<void> {
  const { work, need, by, detail, context } = doing;
  const { at, note = null } = by;
  await eachKept(doing, async (container) => {
    const room = await work.tx.room.findUniqueOrThrow({ where: { id: need.roomId ?? container.roomId } });
    const isInRoom = detail.humidityPercent === null;
    const air = await airAt(context, room.id, at);
    const said = {
      humidityPercent: detail.humidityPercent ?? Math.min(100, air?.humidityPercent ?? usualHumidityPercent),
      temperatureC: by.temperatureC ?? air?.temperatureC ?? usualTemperatureC,
      ...(isInRoom ? { over: `in ${room.name}` } : {}),
    };
    const recorded = await happened(work, { type: 'EQUILIBRATED', container, at, note, said });
    const why = `nothing is known of the air of ${room.name} then: ${usualHumidityPercent} % RH was taken for granted`;
    return isInRoom && !air ? { ...recorded, notes: [...recorded.notes, why] } : recorded;
  });
}
