// A file that is handed in as the raw body of a request, with its name in a header.
import type { IncomingMessage } from 'node:http';

/** The name in `x-file-name`, which is percent-encoded because headers hold no letters beyond Latin-1. */
export function fileNameOf(request: IncomingMessage): string | null {
  const header = request.headers['x-file-name'];
  if (typeof header !== 'string' || header.trim() === '') return null;
  try {
    return (
      decodeURIComponent(header)
        .replace(/^.*[\\/]/, '')
        .slice(0, 200) || null
    );
  } catch {
    return null;
  }
}

/** The body's bytes; null when it is larger than a file may be. */
export async function bodyOf(request: IncomingMessage, mostBytes: number): Promise<Uint8Array<ArrayBuffer> | null> {
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) return null;
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Uint8Array>) {
    size += part.length;
    if (size > mostBytes) return null;
    parts.push(part);
  }
  return new Uint8Array(Buffer.concat(parts));
}
