// The thread that reads one large file.
import { parentPort, workerData } from 'node:worker_threads';
import type { Answers } from './logger/file.ts';
import { isLoggerFile, readLogger } from './logger/read.ts';

export interface ToRead {
  bytes: Uint8Array;
  fileName: string;
  answers: Answers;
}

const { bytes, fileName, answers } = workerData as ToRead;
const read = await readLogger(bytes, fileName, answers);
const arrays = isLoggerFile(read) ? read.series.flatMap(({ readings }) => Object.values(readings)) : [];
parentPort?.postMessage(
  read,
  arrays.map(({ buffer }) => buffer as ArrayBuffer),
);
