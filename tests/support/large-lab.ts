// Writes a lab of very many containers into the SQLite file of a folder: labels one can type, rooms and sorbents with names,
// lids on and off, plates among them, all estimated. Run by itself: `node --import tsx tests/support/large-lab.ts FOLDER 5000`.
import { openDatabase } from '../../api/database/database.ts';
import { runPass } from '../../api/exposure/pass.ts';
import { startThread } from '../../api/exposure/thread.ts';
import { labelOf } from '../../api/stock/label.ts';
import { writeFleet } from './fleet.ts';

const [dataFolder = '', count = '5000'] = process.argv.slice(2);
const hour = 3_600_000;
const hoursOpen = 20;

const rooms = ['wet bench', 'instrument bay', 'cold store', 'store room', 'prep room', 'plate room'];
const sorbents: Record<string, string> = {
  silica: 'Silica 40–63 µm',
  alumina: 'Alumina, neutral',
  'magnesium silicate': 'Magnesium silicate',
};
/** In turn: two open, three well closed, five tight, two sealed as received. */
const closures = [
  ...(['OPEN', 'TIGHT', 'WELL_CLOSED', 'TIGHT', 'SEALED', 'WELL_CLOSED'] as const),
  ...(['OPEN', 'TIGHT', 'TIGHT', 'WELL_CLOSED', 'TIGHT', 'SEALED'] as const),
];

const database = await openDatabase({ dataFolder });
const labId = await writeFleet(database, {
  count: Number(count),
  rooms: rooms.length,
  lots: 60,
  start: Math.floor((Date.now() - hoursOpen * hour) / 300_000) * 300_000,
  days: 2,
  labelOf,
  // Shifted from round to round of the rooms, so that each room has some of all.
  closureOf: (i) => closures[(i + Math.floor(i / rooms.length)) % closures.length] ?? 'TIGHT',
});
await database.write(async (tx) => {
  // Numbers go on after those that were written in bulk.
  for (const name of ['label', 'event']) await tx.counter.create({ data: { labId, name, value: Number(count) + 1 } });
  await tx.lab.update({ where: { id: labId }, data: { name: 'Fenwick Hollow Botanical Station', isDemo: true } });
  for (const [i, name] of rooms.entries())
    await tx.room.updateMany({ where: { labId, name: `room ${i + 1}` }, data: { name } });
  for (const [name, full] of Object.entries(sorbents))
    await tx.sorbent.updateMany({ where: { labId, name }, data: { name: full } });
  const lots = await tx.lot.findMany({ where: { labId }, select: { id: true, lotNumber: true } });
  for (const { id, lotNumber } of lots)
    await tx.lot.update({ where: { id }, data: { lotNumber: `F-${100 + Number(lotNumber.slice(1))}` } });
});
const threads = [startThread({ dataFolder }), startThread({ dataFolder })];
const lab = { id: labId, timeZone: 'UTC', settings: {} };
await runPass({ database, lab, threads, now: () => new Date(), stopped: () => false });
// The last one to let go of the file writes all of it into it; only that file is copied.
for (const thread of threads) await thread.stop();
await database.close();
process.exit(0);
