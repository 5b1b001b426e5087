// Dried, as the tick says it: on what was taken apart for it, and off the list of what to dry.
import { happened } from '../stock/service.ts';
import { platesApart, sorbentApart } from './done-apart.ts';
import { type Doing, noted } from './doing.ts';

export async function ovenDone(doing: Doing): Promise<void> {
  const { work, need, by, detail } = doing;
  const own = need.kind === 'PLATES' ? await platesApart(doing) : await sorbentApart(doing);
  const oven = await work.tx.oven.findFirst({ where: { id: detail.ovenId ?? '', labId: work.labId } });
  for (const container of own) {
    const said = {
      temperatureC: by.temperatureC ?? detail.temperatureC,
      minutes: by.minutes ?? detail.minutes,
      vacuum: detail.isVacuum ?? false,
      waterFraction: by.waterFraction ?? null,
      depthMm: detail.depthMm,
      ...(oven ? { oven: oven.name, fan: oven.hasFan, waterMbar: oven.waterMbar } : {}),
      ...(oven && detail.isVacuum ? { pressureMbar: oven.pressureMbar } : {}),
    };
    const recorded = await happened(work, { type: 'DRIED', container, at: by.at, note: by.note ?? null, said });
    noted(doing, recorded);
    const waiting = await work.tx.dryingRequest.findMany({
      where: { labId: work.labId, needId: need.id, state: 'WAITING' },
    });
    for (const { id } of waiting) {
      await work.tx.dryingRequest.update({
        where: { id },
        data: { state: 'DRIED', endedAt: by.at, eventId: recorded.eventId },
      });
      work.changed('DryingRequest', id, 'CHANGED');
    }
  }
}
