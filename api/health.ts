// What `/health` answers.
import { readFileSync } from 'node:fs';
import type { App } from './yoga.ts';

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
  version: string;
};

export interface Health {
  ok: true;
  version: string;
  /** Seconds since the oldest estimate of a container in use was made; null when there is none. */
  estimateAgeSeconds: number | null;
}

export async function healthOf(app: App): Promise<Health> {
  const oldest = await app.database.read.exposure.findFirst({
    where: { labId: app.lab.id, container: { finishedAt: null } },
    orderBy: { asOf: 'asc' },
    select: { asOf: true },
  });
  const age = oldest ? Math.max(0, Math.round((app.now().getTime() - oldest.asOf.getTime()) / 1000)) : null;
  return { ok: true, version, estimateAgeSeconds: age };
}
