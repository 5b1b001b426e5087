// Start: serves the lab that the environment names until it is told to end. Defines nothing itself.
import { NewerDatabase } from './database/migrate.ts';
import { serving } from './serving.ts';
import { InvalidSetting, readSettings } from './settings.ts';

try {
  const { address, place, stop } = await serving(readSettings(process.env));
  for (const signal of ['SIGTERM', 'SIGINT'] as const)
    process.on(signal, () => void stop().then(() => process.exit(0)));
  console.log(`Drumkeep is at ${address}`);
  console.log(`The book lies in ${place}`);
} catch (error) {
  if (!(error instanceof InvalidSetting) && !(error instanceof NewerDatabase)) throw error;
  console.error(error.message);
  process.exit(1);
}
