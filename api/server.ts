// Start: settings, database, lab, estimates, HTTP. Defines nothing itself.
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { NewerDatabase } from './database/migrate.ts';
import { openDatabase } from './database/database.ts';
import { startPasses } from './exposure/passes.ts';
import { startLearning } from './learning/service.ts';
import { serverOf } from './http.ts';
import { labOf } from './lab.ts';
import { InvalidSetting, readSettings } from './settings.ts';
import type { App } from './yoga.ts';

async function start(): Promise<void> {
  const settings = readSettings(process.env);
  const database = await openDatabase(settings);
  const now = () => new Date();
  const begun = now();
  const app: App = { settings, database, now, lab: await labOf(database, settings, begun) };
  const passes = startPasses(app);
  const learning = startLearning(app, () => passes.now());
  // A lab that was made just now shows its answers from the first look on.
  if (app.lab.createdAt >= begun) {
    await passes.now();
    await learning.now();
  } else void learning.now();
  const server = serverOf(app, fileURLToPath(new URL('../.data/admin', import.meta.url)));

  let ending: Promise<never> | undefined;
  async function end(code: number): Promise<never> {
    server.close();
    server.closeAllConnections();
    await learning.stop();
    await passes.stop();
    await database.close();
    process.exit(code);
  }
  const endOnce = (code: number) => (ending ??= end(code));
  process.on('SIGTERM', () => void endOnce(0));
  process.on('SIGINT', () => void endOnce(0));

  server.on('error', (error) => {
    console.error(`invalid PORT: ${settings.port}, ${error.message}`);
    void endOnce(1);
  });
  server.listen(settings.port, settings.host, () => {
    const { address, family, port } = server.address() as AddressInfo;
    const scheme = settings.tls ? 'https' : 'http';
    console.log(`Drumkeep is at ${scheme}://${family === 'IPv6' ? `[${address}]` : address}:${port}`);
    console.log(`The book lies in ${database.place}`);
  });
}

try {
  await start();
} catch (error) {
  if (!(error instanceof InvalidSetting) && !(error instanceof NewerDatabase)) throw error;
  console.error(error.message);
  process.exit(1);
}
