// The one form of a mutation: `input` in, its success type or a `Refusal` out.
import type { InputFieldMap, InputRef, ObjectRef } from '@pothos/core';
import type { z } from 'zod';
import { builder } from './builder.ts';
import type { Context } from './context.ts';
import { checked, Refused } from './errors.ts';

/** The type parameters of the builder. */
type Types = typeof builder extends PothosSchemaTypes.SchemaBuilder<infer T> ? T : never;

type Fields = (t: Parameters<Parameters<typeof builder.inputType>[1]['fields']>[0]) => InputFieldMap;

export interface Mutation<Input, Success> {
  description: string;
  /** What to use instead, of one that a newer name replaces. */
  deprecationReason?: string | undefined;
  /** The GraphQL input fields; `clientKey` is added to each. */
  fields: Fields;
  /** What the input must be; refuses with the path of the first thing that is wrong. */
  check: z.ZodType<Input>;
  success: ObjectRef<Types, Success>;
  run: (input: Input, context: Context) => Promise<Success>;
}

const keyText =
  'A key of your own (a UUID, say). The same key with the same input returns the first answer and writes nothing, so a repeat is safe.';

/** Registers `name(input: <Name>Input!): <Name>Result!` on the schema. */
export function addMutation<Input, Success>(name: string, of: Mutation<Input, Success>): void {
  const title = name[0]?.toUpperCase() + name.slice(1);
  const input = builder.inputType(`${title}Input`, {
    description: `What \`${name}\` is told.`,
    fields: (t) => ({ ...of.fields(t), clientKey: t.string({ description: keyText }) }),
  }) as InputRef<unknown>;
  builder.mutationField(name, (t) =>
    t.field({
      type: of.success as never,
      description: of.description,
      ...(of.deprecationReason && { deprecationReason: of.deprecationReason }),
      authScopes: { write: true },
      args: { input: t.arg({ type: input as never, required: true, description: 'What it is told.' }) },
      errors: {
        types: [Refused],
        union: { name: `${title}Result`, description: `What \`${name}\` answers: what was done, or a refusal.` },
      },
      resolve: (async (_: unknown, args: { input: unknown }, context: Context) =>
        of.run(checked(of.check, args.input), context)) as never,
    }),
  );
}
