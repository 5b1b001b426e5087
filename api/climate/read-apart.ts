// Reading a logger's file without keeping everybody else waiting.
import { Worker } from 'node:worker_threads';
import type { Answers, LoggerFile, NotALogger } from './logger/file.ts';
import { readLogger } from './logger/read.ts';
import type { ToRead } from './worker.ts';

/** Below this a file is read in a fifth of a second or less, sooner than a thread has started. */
const smallBytes = 2_000_000;

/** The file as read; a large one in a thread of its own. */
export function readApart(bytes: Uint8Array, fileName: string, answers: Answers): Promise<LoggerFile | NotALogger> {
  if (bytes.length < smallBytes) return readLogger(bytes, fileName, answers);
  const toRead: ToRead = { bytes, fileName, answers };
  const worker = new Worker(new URL('./worker.mjs', import.meta.url), { workerData: toRead, execArgv: [] });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the reading thread ended without an answer')));
  });
}
