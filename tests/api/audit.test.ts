// The server against the rules of GraphQL over HTTP, and what it hides.
import { auditServer } from 'graphql-http';
import { beforeAll, expect, it } from 'vitest';
import { describeEngines } from '../support/engines.ts';
import { newWorld, type World } from '../support/world.ts';

describeEngines('the server', (on) => {
  let world: World;
  beforeAll(async () => {
    world = await newWorld(await on.fresh());
  });

  it('keeps every rule of GraphQL over HTTP (the audits of graphql-http)', async () => {
    const results = await auditServer({
      url: 'http://localhost/graphql',
      fetchFn: (url: string, init: RequestInit) => world.yoga.fetch(url, init),
    });
    expect(results.length).toBeGreaterThanOrEqual(60);
    const broken = results.filter(({ status }) => status !== 'ok');
    expect(broken.map(({ id, name }) => `${id} ${name}`)).toEqual([]);
  });

  it('hides the inside of what nobody foresaw, and says where it is logged', async () => {
    const broken = await newWorld({
      ...world.database,
      read: new Proxy(world.database.read, {
        get: () => ({ findMany: () => Promise.reject(new Error('disk on fire')) }),
      }),
    });
    const { errors } = await broken.post('{ sorbents { nodes { name } } }');
    expect(errors?.[0]?.message).toMatch(
      /^something went wrong here; nothing was changed\. It is logged as [0-9a-f-]{36}\.$/,
    );
    expect(JSON.stringify(errors)).not.toContain('fire');
  });
});
