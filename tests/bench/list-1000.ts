// The lab's own list of a thousand lines: handed in, understood and booked whole, through the served API.
import { serveApart } from '../support/own-server.ts';
import { quantile, spread, type Bench } from './bench.ts';

const targetS = 15;
const lines = 1_000;
const heading = 'code\tsorbent\tlot\tamount\tin\treceived\topened\tlid\troom\n';
const row = (run: number, at: number): string =>
  `${run}-${at}\tSilica 40–63 µm\tL-${run}-${at % 40}\t500 g\tjar 1 L\t2026-02-02\t2026-02-10\t\twet bench`;

/** Seconds from handing the list in until all of it is on the book. */
export async function list1000(short: boolean): Promise<Bench> {
  const served = await serveApart();
  try {
    await served.tell('addRoom', { name: 'wet bench' });
    await served.tell('addSorbent', { name: 'Silica 40–63 µm', sorbentClass: 'silica' });
    await served.tell('addVessel', { name: 'jar 1 L', innerDiameterMm: 95, heightMm: 150 });
    const took: number[] = [];
    for (let run = 0; run < (short ? 1 : 4); run += 1) {
      const body = heading + Array.from({ length: lines }, (_, at) => row(run, at)).join('\n');
      const began = performance.now();
      const handed = await fetch(`${served.address}/lists`, {
        method: 'POST',
        headers: { 'x-file-name': 'stock.tsv' },
        body,
      });
      const { id } = (await handed.json()) as { id: string };
      const { containerCount } = await served.tell('receiveList', { list: id, answers: {} });
      if (containerCount !== lines) throw new Error(`${String(containerCount)} of ${lines} containers came in`);
      took.push((performance.now() - began) / 1000);
    }
    const value = quantile(took, 0.5);
    return { value, unit: 's', against: `${targetS} s`, ratio: value / targetS, spread: spread(took) };
  } finally {
    await served.stop();
  }
}
