// What we hand out to be copied must work: the queries that GraphiQL opens with, and those in the example scripts.
import { readFileSync } from 'node:fs';
import { parse, validate } from 'graphql';
import { describe, expect, it } from 'vitest';
import { exampleQueries } from '../../api/examples.ts';
import { schema } from '../../api/schema.ts';

const script = (name: string): string =>
  readFileSync(new URL(`../../fixtures/scripts/${name}`, import.meta.url), 'utf8');

/** The first GraphQL text of a script, between these marks. */
function between(text: string, begin: RegExp, end: string): string {
  const from = begin.exec(text);
  if (!from) throw new Error(`no ${String(begin)} in the script`);
  const start = from.index + from[0].length;
  return text.slice(start, text.indexOf(end, start)).replaceAll('\\$', '$');
}

const texts = {
  'the page to try queries on': exampleQueries,
  'open-silica.py': between(script('open-silica.py'), /QUERY = """/, '"""'),
  'take-scoop.ts': between(script('take-scoop.ts'), /const mutation = `/, '`;'),
  'plan-night.ts': between(script('plan-night.ts'), /const mutation = `/, '`;'),
  'plan-night.ts, what it asks for': between(script('plan-night.ts'), /const request = `/, '`;'),
  'send-reading.sh': between(script('send-reading.sh'), /"query": "/, '"'),
};

describe('an example', () => {
  it.each(Object.entries(texts))('asks only what the schema has: %s', (_, text) => {
    expect(text.trim().length).toBeGreaterThan(50);
    expect(validate(schema, parse(text)).map(({ message }) => message)).toEqual([]);
  });
});
