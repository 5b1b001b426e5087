// A server of its own for a journey: a free port, a folder that goes afterwards, and the admin as it is now.
import { serving } from '../../api/serving.ts';
import { readSettings } from '../../api/settings.ts';
import { asked, type Served } from '../support/asked.ts';
import { behindDoor } from '../support/engines.ts';
import { labFolder, type LabWanted } from '../support/lab-folder.ts';

/** It runs in this process, which has read the API already: a start of its own would be a tenth of all tests. */
export async function serve(wanted: LabWanted = {}): Promise<Served> {
  const { settings, remove } = labFolder(wanted, await behindDoor('/sqlite/migrated'));
  const { address, stop } = await serving(readSettings({ ...process.env, ...settings }));
  async function stopped(): Promise<void> {
    await stop();
    remove();
  }
  return { address, ...asked(address), stop: stopped };
}
