// A room that is made along with other things, in one act.
import { newId, type Work } from '../work.ts';

export async function madeRoom(work: Work, name: string, kind: 'ROOM' | 'COLD_STORE' | 'DESICCATOR'): Promise<string> {
  const room = await work.tx.room.create({ data: { id: newId(), labId: work.labId, name, kind } });
  work.changed('Room', room.id, 'MADE');
  return room.id;
}
