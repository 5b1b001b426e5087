// One lab served: its database open, its estimates kept up, its door open. Ends as a whole.
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { openDatabase } from './database/database.ts';
import { startPasses } from './exposure/passes.ts';
import { serverOf } from './http.ts';
import { labOf } from './lab.ts';
import { startLearning } from './learning/service.ts';
import { InvalidSetting, type Settings } from './settings.ts';
import type { App } from './yoga.ts';

export interface Serving {
  /** Where it is, as one types it. */
  readonly address: string;
  /** Where the book lies. */
  readonly place: string;
  /** Lets go of everything, once: callers are cut off, what is being estimated is finished. */
  readonly stop: () => Promise<void>;
}

/** Throws `InvalidSetting` when the port cannot be had, and what opening the database throws. */
export async function serving(settings: Settings): Promise<Serving> {
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

  async function end(): Promise<void> {
    server.close();
    server.closeAllConnections();
    await learning.stop();
    await passes.stop();
    await database.close();
  }
  let ending: Promise<void> | undefined;
  const stop = () => (ending ??= end());

  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen(settings.port, settings.host, listening);
  }).catch(async (error: Error) => {
    await stop();
    throw new InvalidSetting('PORT', String(settings.port), `a port that can be had (${error.message})`);
  });
  const { address, family, port } = server.address() as AddressInfo;
  const host = family === 'IPv6' ? `[${address}]` : address;
  return { address: `${settings.tls ? 'https' : 'http'}://${host}:${port}`, place: database.place, stop };
}
