// `POST /files`: a logger's file as raw bytes, kept until it is imported.
import type { IncomingMessage } from 'node:http';
import type { App } from '../yoga.ts';

export async function receiveFile(_app: App, request: IncomingMessage): Promise<{ status: number; body: unknown }> {
  request.resume();
  return { status: 501, body: { error: 'files are not read yet' } };
}
