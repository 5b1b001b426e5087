// Handing in a file over HTTP.
import type { IncomingMessage } from 'node:http';
import { Readable } from 'node:stream';
import { expect, it } from 'vitest';
import { readLogger } from '../../api/climate/logger/read.ts';
import { readApart } from '../../api/climate/read-apart.ts';
import { mostFileBytes, receiveFile } from '../../api/climate/upload.ts';
import { describeEngines } from '../support/engines.ts';
import { labsOf, start } from './lab.ts';

const request = (body: Uint8Array | Uint8Array[], headers: Record<string, string>): IncomingMessage =>
  Object.assign(Readable.from(Array.isArray(body) ? body : [body]), { headers }) as unknown as IncomingMessage;

const text = (rows: string[]) => new TextEncoder().encode(rows.join('\n'));
const good = text(['Time,Temp (°C),RH (%)', '2026-03-02T08:00:00Z,21.5,44', '2026-03-02T08:10:00Z,21.6,45', '']);

describeEngines('handing in a file', (on) => {
  const newLab = labsOf(on);
  it('a logger file is kept and answered with what was understood', async () => {
    const lab = await newLab();
    const answer = await receiveFile(lab, request(good, { 'x-file-name': encodeURIComponent('März/bench 1.csv') }));
    expect(answer).toMatchObject({
      status: 200,
      body: { name: 'bench 1.csv', sizeBytes: good.length, questions: [], leftOutCount: 0 },
    });
    const { id, series } = answer.body as { id: string; series: { quantity: string; readings: number }[] };
    expect(series.map(({ quantity, readings }) => [quantity, readings])).toEqual([
      ['temperature', 2],
      ['relative humidity', 2],
    ]);
    const row = await lab.database.read.storedFile.findUnique({ where: { id } });
    expect(row?.bytes && Buffer.from(row.bytes).equals(good)).toBe(true);
  });

  it('a large file is read in a thread of its own, with the same answer', async () => {
    const rows = Array.from(
      { length: 65_000 },
      (_, i) => `${new Date(start + i * 60_000).toISOString()},21.${i % 9},4${i % 9}`,
    );
    const bytes = text(['Time,Temp (°C),RH (%)', ...rows, 'event: door', '']);
    expect(bytes.length).toBeGreaterThan(2_000_000);
    const apart = await readApart(bytes, 'bench.csv', { labZone: 'UTC' });
    expect(apart).toEqual(await readLogger(bytes, 'bench.csv', { labZone: 'UTC' }));
  });

  it('what cannot be kept is refused in words', async () => {
    const lab = await newLab();
    const picture = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]);
    expect(await receiveFile(lab, request(picture, { 'x-file-name': 'shelf.png' }))).toMatchObject({ status: 422 });
    expect(await receiveFile(lab, request(good, {}))).toMatchObject({ status: 400 });
    const large = Array.from({ length: mostFileBytes / 1e6 + 1 }, () => new Uint8Array(1e6));
    expect(await receiveFile(lab, request(large, { 'x-file-name': 'large.csv' }))).toMatchObject({ status: 413 });
    const said = { 'x-file-name': 'large.csv', 'content-length': String(mostFileBytes + 1) };
    expect(await receiveFile(lab, request(good, said))).toMatchObject({ status: 413 });
    expect(await lab.database.read.storedFile.count({ where: { labId: lab.lab.id } })).toBe(0);
  });
});
