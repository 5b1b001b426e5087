// Readings come in any order and any parts; the air must not depend on it.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addReadings } from '../../api/climate/add-readings.ts';
import type { Context } from '../../api/context.ts';
import { describeEngines } from '../support/engines.ts';
import { day, labsOf, hour, minute, type Reading, readings, room, start } from './lab.ts';

const wave = (at: number, size: number) => size * Math.sin((2 * Math.PI * (at - start)) / day);

/** Four days of two sensors: one with a gap of 9 h and an hour of nonsense, the other stuck for a day. */
function sent(): { sensor: string; reading: Reading }[] {
  const all = {
    a: readings(start, start + 4 * day, 20 * minute, (at) => [21 + wave(at, 3), 45 - wave(at, 8)]),
    b: readings(start + hour, start + 4 * day, 30 * minute, (at) => [
      22 + wave(at, 3),
      at < start + day ? 45 - wave(at, 8) : 45,
    ]),
  };
  return Object.entries(all).flatMap(([sensor, of]) =>
    of
      .filter(({ at }) => sensor === 'b' || at.getTime() < start + 2 * day || at.getTime() > start + 2 * day + 9 * hour)
      .map((reading) => ({
        sensor,
        reading:
          sensor === 'a' && reading.at.getTime() === start + 8 * hour ? { ...reading, humidityPercent: 999 } : reading,
      })),
  );
}

async function storedDays({ database }: Context, roomId: string): Promise<[number, string][]> {
  const rows = await database.read.roomDay.findMany({ where: { roomId }, orderBy: { day: 'asc' } });
  return rows.map(({ day: number, blocks }) => [number, Buffer.from(blocks).toString('hex')]);
}

describeEngines('readings in any order', (on) => {
  const newLab = labsOf(on);
  it('the same readings in any order and any parts give the same air, byte for byte', async () => {
    const lab = await newLab();
    const all = sent();
    let rooms = 0;
    const airOfParts = async (parts: { sensor: string; reading: Reading }[][]) => {
      rooms += 1;
      const id = await room(lab, `room ${rooms}`);
      for (const part of parts) {
        for (const sensor of ['b', 'a']) {
          const of = part.filter((one) => one.sensor === sensor).map(({ reading }) => reading);
          if (of.length > 0) await addReadings(lab, { room: `room ${rooms}`, sensor, readings: of });
        }
      }
      return storedDays(lab, id);
    };
    const whole = await airOfParts([all]);
    expect(whole.length).toBe(4);
    await fc.assert(
      fc.asyncProperty(fc.infiniteStream(fc.nat(1_000_000)), async (numbers) => {
        const shuffled = all.map((one) => ({ one, key: numbers.next().value })).sort((x, y) => x.key - y.key);
        const parts: { sensor: string; reading: Reading }[][] = [[], [], [], []];
        for (const { one, key } of shuffled) parts[key % 4]?.push(one);
        expect(await airOfParts([...parts, all.slice(0, 50)])).toEqual(whole);
      }),
      { numRuns: 4 },
    );
  });

  it('a summer-time day is a day like any other: nothing is lost and nothing is doubled', async () => {
    const lab = await newLab();
    const id = await room(lab, 'wet bench');
    // Europe/Helsinki went to summer time on 29 March 2026 at 01:00 UTC.
    const change = Date.UTC(2026, 2, 29, 1);
    await addReadings(lab, {
      room: 'wet bench',
      readings: readings(change - day, change + day, 10 * minute, () => [21, 50]),
    });
    const rows = await lab.database.read.roomDay.findMany({ where: { roomId: id }, orderBy: { day: 'asc' } });
    const known = rows.map(({ blocks }) => blocks.slice(-288).filter((doubt) => doubt === 0).length);
    expect(known).toEqual([276, 288, 11]);
  });
});
