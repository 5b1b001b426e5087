// The wire between a browser and the server, which can be cut: whatever the browser keeps of being offline, nothing passes.
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

export interface Wire {
  /** Where the server is found at this end. */
  readonly address: string;
  readonly cut: () => void;
  readonly mend: () => void;
  readonly stop: () => Promise<void>;
}

export async function wireTo(address: string): Promise<Wire> {
  const { hostname, port } = new URL(address);
  const ends = new Set<Socket>();
  let isCut = false;
  const keep = (end: Socket): Socket => {
    ends.add(end);
    // A cut wire is an error at both ends, and nothing else.
    return end.on('error', () => end.destroy()).on('close', () => ends.delete(end));
  };
  const server = createServer((near) => {
    if (isCut) return void near.destroy();
    const far = connect(Number(port), hostname);
    keep(near).pipe(keep(far)).pipe(near);
    near.on('close', () => far.destroy());
    far.on('close', () => near.destroy());
  });
  await new Promise<void>((listening) => server.listen(0, hostname, listening));
  const cutAll = () => ends.forEach((end) => end.destroy());
  return {
    address: `http://${hostname}:${(server.address() as AddressInfo).port}`,
    cut() {
      isCut = true;
      cutAll();
    },
    mend() {
      isCut = false;
    },
    async stop() {
      const closed = new Promise((done) => server.close(done));
      cutAll();
      await closed;
    },
  };
}
