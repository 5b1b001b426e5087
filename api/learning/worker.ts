// The thread that learns while the server answers: reads, fits, hands the fit over and ends. It writes nothing.
import { parentPort, workerData } from 'node:worker_threads';
import type { DatabaseSettings } from '../database/place.ts';
import { openSelector } from '../database/select.ts';
import type { LabFacts } from '../exposure/service.ts';
import { fitOf } from './fit.ts';

export interface ToLearn {
  settings: DatabaseSettings;
  lab: LabFacts;
  /** Of the fit before; null where there is none. */
  basis: string | null;
}

const { settings, lab, basis } = workerData as ToLearn;
const reader = openSelector(settings);
const fit = await fitOf(reader, lab, basis);
await reader.close();
parentPort?.postMessage(fit);
