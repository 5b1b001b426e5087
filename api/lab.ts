// The lab this server keeps: made on the first start, with the demo's stock unless told otherwise.
import type { Database } from './database/database.ts';
import type { Transaction } from './database/client.ts';
import type { Lab } from './database/generated/sqlite/client.ts';
import { loadersOf } from './loaders.ts';
import type { Settings } from './settings.ts';
import { newId } from './work.ts';

/** Whether the demo was booked to its end; a start that was cut short begins it again. */
const unfinished = { demo: 'unfinished' };

const isUnfinished = (lab: Lab): boolean => (lab.settings as { demo?: string }).demo === unfinished.demo;

/** Removes a lab with all its rows, children first. */
async function removed(tx: Transaction, labId: string): Promise<void> {
  const where = { labId };
  await tx.change.deleteMany({ where });
  await tx.clientKey.deleteMany({ where });
  await tx.delivery.deleteMany({ where });
  await tx.order.deleteMany({ where });
  await tx.offer.deleteMany({ where });
  await tx.boughtItem.deleteMany({ where });
  await tx.storageGroup.deleteMany({ where });
  await tx.campaign.deleteMany({ where });
  await tx.purchasePlan.deleteMany({ where });
  await tx.prepStep.deleteMany({ where });
  await tx.need.deleteMany({ where });
  await tx.needSeries.deleteMany({ where });
  await tx.prepSheet.deleteMany({ where });
  await tx.solventBatch.deleteMany({ where });
  await tx.retentionRun.deleteMany({ where });
  await tx.lotCheck.deleteMany({ where });
  await tx.lotDecision.deleteMany({ where });
  await tx.gradeTable.deleteMany({ where });
  await tx.gradeMeasured.deleteMany({ where });
  await tx.prepPlan.deleteMany({ where });
  await tx.dryingLoad.deleteMany({ where });
  await tx.dryingRun.deleteMany({ where });
  await tx.ovenPlan.deleteMany({ where });
  await tx.ovenCare.deleteMany({ where });
  await tx.oven.deleteMany({ where });
  await tx.dryingRequest.deleteMany({ where });
  await tx.ledgerLine.deleteMany({ where });
  await tx.ledgerWeek.deleteMany({ where });
  await tx.ledgerState.deleteMany({ where });
  await tx.stockList.deleteMany({ where });
  await tx.barcode.deleteMany({ where });
  await tx.hold.deleteMany({ where });
  await tx.parcel.deleteMany({ where });
  await tx.checkpoint.deleteMany({ where });
  await tx.exposure.deleteMany({ where });
  await tx.learnedFactor.deleteMany({ where });
  await tx.learnedWeighing.deleteMany({ where });
  await tx.weighingJudgement.deleteMany({ where });
  await tx.event.updateMany({ where, data: { correctsId: null } });
  await tx.event.deleteMany({ where });
  await tx.container.updateMany({ where, data: { takenFromId: null } });
  await tx.container.deleteMany({ where });
  await tx.lot.deleteMany({ where });
  await tx.sorbentProperty.deleteMany({ where });
  await tx.sorbent.deleteMany({ where });
  await tx.supplier.deleteMany({ where });
  await tx.vessel.deleteMany({ where });
  await tx.person.deleteMany({ where });
  await tx.import.deleteMany({ where });
  await tx.storedFile.deleteMany({ where });
  await tx.readingDay.deleteMany({ where });
  await tx.sensor.deleteMany({ where });
  await tx.roomDay.deleteMany({ where });
  await tx.room.deleteMany({ where });
  await tx.counter.deleteMany({ where });
  await tx.lab.delete({ where: { id: labId } });
}

async function demoLab(database: Database, settings: Settings, now: Date): Promise<Lab> {
  const name = 'Fenwick Hollow Botanical Station';
  const { timeZone } = settings;
  const made = { id: newId(), name, timeZone, isDemo: true, settings: unfinished, createdAt: now };
  const lab = await database.write((tx) => tx.lab.create({ data: made }));
  const { filledDemo } = await import('../fixtures/demo/fill.ts');
  console.log('Opening the demo lab …');
  await filledDemo({ lab, actor: null, database, settings, now: () => now, load: loadersOf(database.read) });
  return database.write((tx) => tx.lab.update({ where: { id: lab.id }, data: { settings: {} } }));
}

/** The one lab of this database; made when there is none. Nothing is ever added to one that is there. */
export async function labOf(database: Database, settings: Settings, now: Date): Promise<Lab> {
  const there = await database.read.lab.findFirst({ orderBy: { createdAt: 'asc' } });
  if (there && !isUnfinished(there)) return there;
  if (there) await database.write((tx) => removed(tx, there.id));
  if (settings.demo) return demoLab(database, settings, now);
  const { timeZone } = settings;
  const made = { id: newId(), name: 'Our lab', timeZone, isDemo: false, settings: {}, createdAt: now };
  return database.write((tx) => tx.lab.create({ data: made }));
}
