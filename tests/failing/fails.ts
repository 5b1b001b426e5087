// Fails, after the database server was started for it.
import { expect, it } from 'vitest';
import { behindDoor } from '../support/engines.ts';

it('fails', async () => {
  expect(await behindDoor('/postgres')).toBe('no address');
}, 60_000);
