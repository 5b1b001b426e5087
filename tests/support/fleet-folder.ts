// Writes a fleet into the SQLite file of a folder, in a process of its own, so that what measures the fleet carries none of that.
import { openDatabase } from '../../api/database/database.ts';
import { writeFleet } from './fleet.ts';

const [dataFolder = '', count = '0', start = '0', days = '0'] = process.argv.slice(2);
const database = await openDatabase({ dataFolder });
await writeFleet(database, { count: Number(count), rooms: 20, lots: 400, start: Number(start), days: Number(days) });
await database.close();
process.exit(0);
