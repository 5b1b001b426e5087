// Folders that labs of tests are served from: new ones, or a copy of one that is made once.
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sqliteFile } from '../../api/database/place.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface LabWanted {
  /** The demo lab, booked anew. */
  readonly demo?: boolean;
  /** A lab of so many containers instead. */
  readonly large?: number;
}

/** The file of a lab of so many containers; made once a day, since estimating thousands takes its time. */
function largeLab(count: number): string {
  const folder = join(tmpdir(), `drumkeep-large-${count}-${new Date().toISOString().slice(0, 10)}`);
  const file = join(folder, 'drumkeep.sqlite');
  if (existsSync(file)) return file;
  const making = mkdtempSync(join(tmpdir(), 'drumkeep-large-'));
  const args = ['--import', 'tsx', 'tests/support/large-lab.ts', making, String(count)];
  const made = spawnSync(process.execPath, args, { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  if (made.status !== 0) throw new Error('the large lab was not written');
  rmSync(folder, { recursive: true, force: true });
  renameSync(making, folder);
  return file;
}

/** The settings of a lab in a folder of its own; `like` is a file of a database to begin with. */
export function labFolder({ demo = false, large = 0 }: LabWanted, like?: string) {
  if (!existsSync(join(root, '.data/admin/index.html'))) throw new Error('the admin is not built: npm run build');
  const folder = mkdtempSync(join(tmpdir(), 'drumkeep-journey-'));
  const file = large > 0 ? largeLab(large) : like;
  if (file !== undefined) copyFileSync(file, sqliteFile(folder));
  const settings = {
    PORT: '0',
    DRUMKEEP_DATA: folder,
    DRUMKEEP_DEMO: demo ? 'yes' : 'no',
    DRUMKEEP_TIME_ZONE: 'Europe/Helsinki',
    DRUMKEEP_LOG: 'error',
  };
  return { settings, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
