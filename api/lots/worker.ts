// The thread that reckons where spread comes from, hands it over and ends.
import { parentPort, workerData } from 'node:worker_threads';
import { spreadsOf, type SpreadInput } from './rules.ts';

parentPort?.postMessage(spreadsOf(workerData as SpreadInput[]));
