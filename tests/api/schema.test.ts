// The schema is a product: what scripts rely on does not break, and every word of it is explained.
import { rmSync, readFileSync, writeFileSync } from 'node:fs';
import {
  buildSchema,
  findBreakingChanges,
  isEnumType,
  isInputObjectType,
  isInterfaceType,
  isIntrospectionType,
  isObjectType,
  isSpecifiedScalarType,
  lexicographicSortSchema,
  printSchema,
  type GraphQLNamedType,
} from 'graphql';
import { describe, expect, it } from 'vitest';
import { schema } from '../../api/schema.ts';

const file = new URL('../../api/schema.graphql', import.meta.url);
const changed = new URL('../../api/schema-changed.graphql', import.meta.url);
const printed = `${printSchema(lexicographicSortSchema(schema))}\n`;

const unexplained = (named: { name: string; description?: string | null | undefined }[], of: string): string[] =>
  named.filter(({ description }) => !description?.trim()).map(({ name }) => `${of}.${name}`);

function unexplainedIn(type: GraphQLNamedType): string[] {
  const missing = type.description?.trim() ? [] : [type.name];
  if (isEnumType(type)) return [...missing, ...unexplained([...type.getValues()], type.name)];
  if (isInputObjectType(type)) return [...missing, ...unexplained(Object.values(type.getFields()), type.name)];
  if (!isObjectType(type) && !isInterfaceType(type)) return missing;
  const fields = Object.values(type.getFields());
  const args = fields.flatMap((field) => unexplained([...field.args], `${type.name}.${field.name}`));
  return [...missing, ...unexplained(fields, type.name), ...args];
}

describe('the GraphQL schema', () => {
  it('breaks nothing that scripts rely on', () => {
    const before = buildSchema(readFileSync(file, 'utf8'));
    expect(findBreakingChanges(before, schema).map(({ description }) => description)).toEqual([]);
  });

  it('is the one that is checked in; a changed one lies beside it to be read and put in its place', () => {
    const same = readFileSync(file, 'utf8') === printed;
    if (same) rmSync(changed, { force: true });
    else writeFileSync(changed, printed);
    expect(same, 'read api/schema-changed.graphql, then put it in the place of api/schema.graphql').toBe(true);
  });

  it('would not lose a field unseen', () => {
    const breaking = findBreakingChanges(
      buildSchema('type Query { a: Int b: Int }'),
      buildSchema('type Query { a: Int }'),
    );
    expect(breaking.map(({ description }) => description)).toEqual(['Query.b was removed.']);
  });

  it('explains every type, field, argument and value', () => {
    const types = Object.values(schema.getTypeMap()).filter(
      (type) => !isIntrospectionType(type) && !isSpecifiedScalarType(type),
    );
    expect(types.flatMap(unexplainedIn)).toEqual([]);
  });

  it('names the unit of each number that has one in the name or the explanation', () => {
    const type = schema.getType('Container');
    const fields = isInterfaceType(type) ? Object.values(type.getFields()) : [];
    const numbers = fields.filter(({ type: of }) => String(of).startsWith('Float'));
    expect(numbers.length).toBeGreaterThan(8);
    for (const { description } of numbers) expect(description).toMatch(/\b(g|mm|mL)\b/);
  });

  it.each([
    'node',
    'nodes',
    'containers',
    'container',
    'lots',
    'sorbents',
    'rooms',
    'room',
    'dryingRequests',
    'whatIf',
  ])('can be asked for %s', (name) => expect(schema.getQueryType()?.getFields()).toHaveProperty(name));

  it.each([
    'receiveLot',
    'openContainer',
    'closeContainer',
    'moveContainer',
    'takePortion',
    'takePlates',
    'packColumn',
    'mixContainer',
    'recordDrying',
    'recordWeighing',
    'finishContainer',
    'discardContainer',
    'correctEvent',
    'requestDrying',
    'addRoom',
    'addReadings',
    'importReadings',
  ])('can be told %s, by input, and answers with a success or a Refusal', (name) => {
    const field = schema.getMutationType()?.getFields()[name];
    expect(field?.args.map((arg) => arg.name)).toEqual(['input']);
    const union = schema.getType(`${name[0]?.toUpperCase()}${name.slice(1)}Result`);
    const members = union && 'getTypes' in union ? union.getTypes().map((type) => type.name) : [];
    expect(members).toHaveLength(2);
    expect(members).toContain('Refusal');
  });
});
