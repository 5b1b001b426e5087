// The calendar of steps, read by a parser of somebody else's; and needs from a file.
import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { serverOf } from '../../api/http.ts';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';
import type { AddressInfo } from 'node:net';

interface Kept {
  need: { id: string; steps: { id: string; kind: string; startAt: string }[] };
}

const fields = 'need { id steps { id kind startAt } }';

describeEngines('the calendar', (on) => {
  let world: World;
  let need: Kept['need'];
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
    await world.furnished();
    await world.plates(25);
    const input = { kind: 'PLATES', sorbent: 'Silica 40–63 µm', plates: 5, forWhom: 'alkaloid screen, 1; 2' };
    need = (await world.tell<Kept>('addNeed', { ...input, at: new Date('2026-03-03T14:00:00+02:00') }, fields)).need;
  });

  async function get(path: string): Promise<{ status: number; text: string; type: string | null }> {
    const app = { ...world.app, settings: { ...world.app.settings, passPhrase: 'open sesame' } };
    const server = serverOf(app, '/nowhere');
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    const { port } = server.address() as AddressInfo;
    const response = await fetch(`http://127.0.0.1:${port}${path}`);
    const text = await response.text();
    server.close();
    server.closeAllConnections();
    return { status: response.status, text, type: response.headers.get('content-type') };
  }

  const path = async (): Promise<string> => {
    await world.tell('renewCalendarAddress', {}, '__typename');
    const { lab } = await world.ask<{ lab: { calendarPath: string } }>('{ lab { calendarPath } }');
    return lab.calendarPath;
  };

  const events = (text: string) =>
    new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));

  it('opens to its secret address alone, and to a renewed one no longer', async () => {
    expect((await get('/calendar.ics')).status).toBe(401);
    const first = await path();
    expect((await get(first)).status).toBe(200);
    const second = await path();
    expect((await get(first)).status).toBe(401);
    expect((await get(second)).type).toContain('text/calendar');
  });

  it('tells each step once, with a name that stays and a number that grows when it moves', async () => {
    const before = events((await get(await path())).text);
    const wash = need.steps.find(({ kind }) => kind === 'PRE_WASH');
    const [, key] = Buffer.from(wash?.id ?? '', 'base64')
      .toString()
      .split(':');
    const one = before.find(({ uid }) => uid === `${key}@drumkeep`);
    expect(one?.startDate.toJSDate()).toEqual(new Date(wash?.startAt ?? ''));
    expect(one?.summary).toBe('Pre-wash: 5 plates, full length in 200 mL methanol and chloroform, 1:1 v/v');
    await world.tell('setNeed', { id: need.id, at: new Date('2026-03-04T14:00:00+02:00') }, '__typename');
    const after = events((await get(await path())).text).find(({ uid }) => uid === one?.uid);
    expect(after?.sequence).toBeGreaterThan(one?.sequence ?? 0);
    expect(after?.startDate.toJSDate()).not.toEqual(one?.startDate.toJSDate());
    await world.tell('dropNeed', { id: need.id }, '__typename');
    const dropped = new ICAL.Component(ICAL.parse((await get(await path())).text) as unknown[]);
    expect(new Set(dropped.getAllSubcomponents('vevent').map((e) => e.getFirstPropertyValue('status')))).toEqual(
      new Set(['CANCELLED']),
    );
  });

  describe('needs from a file', () => {
    const head = 'kind,sorbent,plates,dryGrams,at,forWhom\n';
    it('come all of them', async () => {
      const text = `${head}PLATES,Silica 40–63 µm,5,,2026-03-05 14:00,one\nPLATES,Silica 40–63 µm,6,,2026-03-05 15:00,two\n`;
      const { needs } = await world.tell<{ needs: { at: string }[] }>('addNeeds', { text }, 'needs { at }');
      expect(needs.map(({ at }) => at)).toEqual(['2026-03-05T12:00:00.000Z', '2026-03-05T13:00:00.000Z']);
    });

    it('or none of them, every problem by its line', async () => {
      const text = `${head}PLATES,Silica 40–63 µm,5,,2026-03-05 14:00,one\nPLATES,Silver sand,6,,2026-03-05 15:00,two\nSORBENT,Silica 40–63 µm,,,soon,three\n`;
      const before = await world.ask<{ needs: unknown[] }>('{ needs { id } }');
      const { answer } = await world.ask<{ answer: { problems: { line: number; column: string }[] } }>(
        `mutation ($input: AddNeedsInput!) { answer: addNeeds(input: $input) { ... on Refusal { problems { line column } } } }`,
        { input: { text } },
      );
      expect(answer.problems).toEqual([
        { line: 3, column: 'sorbent' },
        { line: 4, column: 'at' },
      ]);
      expect((await world.ask<{ needs: unknown[] }>('{ needs { id } }')).needs).toHaveLength(before.needs.length);
    });
  });
});
