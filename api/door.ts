// The door: where a pass phrase is set, nobody comes in without it (HTTP Basic authentication, RFC 7617; any user name).
import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';

/** What a wrong try waits for its answer, ms: more with each from the same address, up to a limit. */
const delayMs = (wrong: number): number => Math.min(2_000, 200 * wrong);
/** Wrong tries are forgotten after so long, ms. */
const forgetMs = 60_000;
/** Addresses remembered at once; the oldest goes first. */
const mostAddresses = 1_000;

const hashOf = (text: string): Buffer => createHash('sha256').update(text, 'utf8').digest();

/** The password of a Basic header; null when there is none. */
export function passwordIn(header: string | undefined): string | null {
  const credentials = /^Basic +([A-Za-z0-9+/]+={0,2}) *$/i.exec(header ?? '')?.[1];
  if (credentials === undefined) return null;
  const [, password] = /^[^:]*:([\s\S]*)$/.exec(Buffer.from(credentials, 'base64').toString('utf8')) ?? [];
  return password ?? null;
}

export type Door = (request: IncomingMessage) => Promise<boolean>;

/** Lets in whoever knows the pass phrase; everybody where there is none. */
export function doorOf(
  passPhrase: string | null,
  { slow = wait }: { slow?: (ms: number) => Promise<unknown> } = {},
): Door {
  if (passPhrase === null) return async () => true;
  const right = hashOf(passPhrase);
  const wrongFrom = new Map<string, { count: number; lastMs: number }>();

  function wrongAgain(address: string): number {
    const now = Date.now();
    const before = wrongFrom.get(address);
    const count = before && now - before.lastMs < forgetMs ? before.count + 1 : 1;
    wrongFrom.delete(address);
    wrongFrom.set(address, { count, lastMs: now });
    const oldest = wrongFrom.keys().next().value;
    if (wrongFrom.size > mostAddresses && oldest !== undefined) wrongFrom.delete(oldest);
    return count;
  }

  return async (request) => {
    const said = passwordIn(request.headers.authorization);
    // Compared as hashes of one length: the time taken tells nothing of the phrase.
    if (said !== null && timingSafeEqual(hashOf(said), right)) return true;
    // A browser asks without credentials first, to learn that they are wanted: no try.
    if (request.headers.authorization !== undefined)
      await slow(delayMs(wrongAgain(request.socket.remoteAddress ?? '')));
    return false;
  };
}
