// Start: settings, database, lab, estimates, HTTP. Defines nothing itself.
import { fileURLToPath } from 'node:url';
import { openDatabase } from './database/database.ts';
import { startPasses } from './exposure/passes.ts';
import { serverOf } from './http.ts';
import { labOf } from './lab.ts';
import { log } from './log.ts';
import { readSettings } from './settings.ts';
import type { App } from './yoga.ts';

const settings = readSettings(process.env);
const database = await openDatabase(settings);
const now = () => new Date();
const lab = await labOf(database, settings, now());
const app: App = { settings, database, lab, now };

const passes = startPasses(app);
const server = serverOf(app, fileURLToPath(new URL('../.data/admin', import.meta.url)));
server.listen(settings.port, settings.host, () => {
  console.log(`Drumkeep is at http://${settings.host}:${settings.port}`);
  console.log(`The book lies in ${database.place}`);
});
server.on('error', (error) => {
  console.error(`invalid PORT: ${settings.port}, ${error.message}`);
  process.exit(1);
});

let ending = false;
async function end(): Promise<void> {
  if (ending) return;
  ending = true;
  server.close();
  server.closeAllConnections();
  await passes.stop();
  await database.close();
  log.info('ended');
  process.exit(0);
}
process.on('SIGTERM', end);
process.on('SIGINT', end);
