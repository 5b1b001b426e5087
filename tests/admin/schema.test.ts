// Everything the admin asks and tells, held against the checked-in schema: fields, arguments, what may be missing, what may be left out.
import { readFileSync } from 'node:fs';
import {
  buildSchema,
  getNamedType,
  isEnumType,
  isInputObjectType,
  isListType,
  isNonNullType,
  isScalarType,
  parse,
  validate,
  type GraphQLInputObjectType,
  type GraphQLInputType,
  type GraphQLOutputType,
} from 'graphql';
import { describe, expect, it } from 'vitest';
import { correctionFields, correctionText, events, eventText, type EventName } from '../../admin/act/acts.ts';
import type { Act } from '../../admin/act/told.ts';
import { actText, type Question } from '../../admin/ask.ts';
import { labQuestion } from '../../admin/lab-question.ts';
import { isWrapped, type Fields } from '../../admin/shape.ts';

const schema = buildSchema(readFileSync(new URL('../../api/schema.graphql', import.meta.url), 'utf8'));

const modules = import.meta.glob<Record<string, unknown>>(['../../admin/**/questions.ts', '../../admin/**/acts.ts'], {
  eager: true,
});
const exported = Object.values(modules).flatMap((module) => Object.entries(module));
const isQuestion = (value: unknown): value is Question<object, Fields> =>
  typeof value === 'object' && value !== null && 'text' in value && 'shape' in value;
const isAct = (value: unknown): value is Act<Fields, Fields> =>
  typeof value === 'object' && value !== null && 'success' in value && 'answer' in value;

const questions: [string, Question<object, Fields>][] = [
  ['labQuestion', labQuestion],
  ...exported.filter((entry): entry is [string, Question<object, Fields>] => isQuestion(entry[1])),
];
const acts = exported.filter((entry): entry is [string, Act<Fields, Fields>] => isAct(entry[1]));

/** Where a shape and the type it is asked of differ in what may be null or a list. */
function differences(shape: unknown, type: GraphQLOutputType, path: string): string[] {
  if (isWrapped(shape) && shape.$ === 'given') return differences(shape.of, type, path);
  if (isWrapped(shape) && shape.$ === 'maybe') {
    return isNonNullType(type) ? [`${path} is never null`] : differencesWithin(shape.of, type, path);
  }
  return isNonNullType(type) ? differencesWithin(shape, type.ofType, path) : [`${path} may be null`];
}

function differencesWithin(shape: unknown, type: GraphQLOutputType, path: string): string[] {
  if (isWrapped(shape) && shape.$ === 'given') return differencesWithin(shape.of, type, path);
  if (isWrapped(shape) && shape.$ === 'many') {
    return isListType(type) ? differences(shape.of, type.ofType, `${path}[]`) : [`${path} is no list`];
  }
  if (isListType(type)) return [`${path} is a list`];
  if (isWrapped(shape)) return isScalarType(type) || isEnumType(type) ? [] : [`${path} has fields of its own`];
  return Object.entries(shape as Fields).flatMap(([name, of]) => {
    const on = /^\.\.\. on (\w+)$/.exec(name)?.[1];
    if (on) return differencesWithin(of, typeNamed(on), `${path}<${on}>`);
    const asked = fieldAsked(name, of);
    const field = 'getFields' in type ? type.getFields()[asked] : undefined;
    return field && 'type' in field ? differences(of, field.type, `${path}.${name}`) : [`${path}.${name} is unknown`];
  });
}

function typeNamed(name: string): GraphQLOutputType {
  const type = schema.getType(name);
  if (!type) throw new Error(`${name} is no type`);
  return type as GraphQLOutputType;
}

/** The field asked, where the answer goes by another name. */
function fieldAsked(name: string, shape: unknown): string {
  if (!isWrapped(shape) || shape.$ === 'leaf') return name;
  return shape.$ === 'given' ? (shape.field ?? name) : fieldAsked(name, shape.of);
}

function inputDifferences(fields: Fields, type: GraphQLInputObjectType, path: string): string[] {
  const known = type.getFields();
  const wanted = Object.values(known).filter(
    ({ type: of, defaultValue, name }) => isNonNullType(of) && defaultValue === undefined && !(name in fields),
  );
  return [
    ...wanted.map(({ name }) => `${path}.${name} is wanted`),
    ...Object.entries(fields).flatMap(([name, shape]) => {
      const field = known[name];
      return field ? inputDifference(shape, field.type, `${path}.${name}`) : [`${path}.${name} is unknown`];
    }),
  ];
}

function inputDifference(shape: unknown, type: GraphQLInputType, path: string): string[] {
  if (isWrapped(shape) && shape.$ === 'maybe')
    return isNonNullType(type) ? [`${path} may not be left out`] : inputDifference(shape.of, type, path);
  const bare = isNonNullType(type) ? type.ofType : type;
  if (isWrapped(shape) && shape.$ === 'many')
    return isListType(bare) ? inputDifference(shape.of, bare.ofType, `${path}[]`) : [`${path} is no list`];
  if (isListType(bare)) return [`${path} is a list`];
  if (isWrapped(shape)) return isInputObjectType(bare) ? [`${path} has fields of its own`] : [];
  return isInputObjectType(bare) ? inputDifferences(shape as Fields, bare, path) : [`${path} has no fields`];
}

const inputOf = (name: string): GraphQLInputObjectType => {
  const mutations = schema.getMutationType()?.getFields() ?? {};
  const argument = mutations[name]?.args.find((one) => one.name === 'input');
  const type = argument && getNamedType(argument.type);
  if (!isInputObjectType(type)) throw new Error(`${name} is no mutation with an input`);
  return type;
};

const problems = (text: string): string[] => validate(schema, parse(text)).map(({ message }) => message);

describe('what the admin asks', () => {
  it.each(questions)('%s is a question the schema answers, null where it says so', (_, { text, shape }) => {
    expect(problems(text)).toEqual([]);
    const query = schema.getQueryType();
    expect(query && differencesWithin(shape, query, 'query')).toEqual([]);
  });
});

describe('what the admin tells', () => {
  it.each(Object.keys(events) as EventName[])('%s is an event the schema takes', (name) => {
    expect(problems(eventText(name))).toEqual([]);
    expect(inputDifferences(events[name], inputOf(name), name)).toEqual([]);
  });
  it.each(acts)('%s is an act the schema takes', (_, { name, success, input, answer }) => {
    expect(problems(actText(name, success, answer))).toEqual([]);
    expect(inputDifferences(input, inputOf(name), name)).toEqual([]);
    expect(differencesWithin(answer, typeNamed(success), success)).toEqual([]);
  });
  it('a correction is one too', () => {
    expect(problems(correctionText)).toEqual([]);
    expect(inputDifferences(correctionFields, inputOf('correctEvent'), 'correctEvent')).toEqual([]);
  });
});
