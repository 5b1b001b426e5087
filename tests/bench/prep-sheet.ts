// A hundred needs over a week: all planned anew and the sheet of a day read, over GraphQL on SQLite; the target is 2 s.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '../../api/database/database.ts';
import { chance } from '../support/fleet.ts';
import { newWorld, type World } from '../support/world.ts';
import { type Bench, quantile, spread } from './bench.ts';

const query = `{ prepSheet(on: "2026-03-04") { steps { sentence since step { kind startAt endAt place cautions { key } } }
  solvents { solvent ml } waste { stream ml } } }`;

/** Plates, sorbent and columns in turn, at times of the working day. */
function invented(): object[] {
  const next = chance(20_260_302);
  return Array.from({ length: 100 }, (_, index) => {
    const day = 3 + Math.floor(next() * 5);
    const at = `2026-03-0${day} ${String(9 + Math.floor(next() * 9)).padStart(2, '0')}:${next() < 0.5 ? '00' : '30'}`;
    const about = { sorbent: 'Silica 40–63 µm', at, forWhom: `need ${index}`, priority: [1, 2, 4, 8][index % 4] };
    if (index % 4 < 2) return { ...about, kind: 'PLATES', plates: 2 + Math.floor(next() * 9) };
    if (index % 4 === 2) return { ...about, kind: 'SORBENT', dryGrams: 50 + Math.floor(next() * 200) };
    const column = { diameterMm: 20, bedLengthMm: 150, mobilePhase: 'hexane:ethyl acetate 4:1' };
    return { ...about, ...column, kind: 'COLUMN' };
  });
}

async function furnished(world: World): Promise<void> {
  await world.furnished();
  await world.tell('setPrepSettings', { tanks: 3, people: 3, hoodPlaces: 120, ovenPlates: 12 }, '__typename');
  for (let box = 0; box < 20; box += 1) await world.plates(25);
  for (let drum = 0; drum < 5; drum += 1) await world.drum(2_000, { basis: 'DRY' });
}

export async function prepSheet(short: boolean): Promise<Bench> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'drumkeep-prep-'));
  const database = await openDatabase({ dataFolder });
  try {
    const world = await newWorld(database, { estimates: false });
    await furnished(world);
    const began = performance.now();
    await world.tell('addNeeds', { text: JSON.stringify(invented()) }, '__typename');
    const addedMs = performance.now() - began;
    const times: number[] = [];
    for (let round = 0; round < (short ? 2 : 7); round += 1) {
      // Later than a plan is taken to hold: all of it is planned anew.
      world.later(11);
      const from = performance.now();
      await world.ask(query);
      times.push(performance.now() - from);
    }
    const open = await database.read.need.count({ where: { labId: world.app.lab.id, firstPossibleAt: null } });
    const value = quantile(times, 0.5);
    return {
      value,
      unit: 'ms to plan 100 needs over a week anew and read a day’s sheet',
      against: 'nothing',
      ratio: null,
      spread: spread(times),
      details: { targetMs: 2_000, worstMs: Math.max(...times), addedAtOnceMs: addedMs, canBeMet: open },
    };
  } finally {
    await database.close();
    rmSync(dataFolder, { recursive: true, force: true });
  }
}
