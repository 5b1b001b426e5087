// The one schema builder; rooms register their types and fields on it.
import SchemaBuilder from '@pothos/core';
import ComplexityPlugin from '@pothos/plugin-complexity';
import ErrorsPlugin from '@pothos/plugin-errors';
import RelayPlugin from '@pothos/plugin-relay';
import ScopeAuthPlugin from '@pothos/plugin-scope-auth';
import type { Context } from './context.ts';
import { relayWords } from './relay.ts';

export const limits = {
  /** Levels of fields below the operation. */
  depth: 12,
  /** Fields times the rows they may bring. */
  complexity: 20_000,
  /** Rows in one page of a connection. */
  pageSize: 200,
  /** Bytes of one request's JSON body. */
  bodyBytes: 4_000_000,
} as const;

export const builder = new SchemaBuilder<{
  Context: Context;
  DefaultFieldNullability: false;
  AuthScopes: { member: boolean; write: boolean };
  Scalars: {
    DateTime: { Input: Date; Output: Date };
    ID: { Input: string; Output: string };
    JSON: { Input: unknown; Output: unknown };
  };
}>({
  plugins: [ScopeAuthPlugin, ErrorsPlugin, ComplexityPlugin, RelayPlugin],
  defaultFieldNullability: false,
  // Everybody may do everything until the lab has accounts; the scopes stand so that fields name them now.
  scopeAuth: { authScopes: () => ({ member: true, write: true }) },
  errors: { defaultTypes: [], directResult: true },
  relay: {
    clientMutationId: 'omit',
    cursorType: 'String',
    nodesOnConnection: { description: 'The things themselves.' },
    ...relayWords,
  },
  complexity: {
    defaultComplexity: 1,
    defaultListMultiplier: 10,
    limit: { complexity: limits.complexity, depth: limits.depth, breadth: 500 },
  },
});

builder.queryType({ description: 'What the lab knows: its stock, how wet it is, its rooms and their air.' });
builder.mutationType({
  description:
    'What happened, and what is wanted. Each takes `input` and answers with its success type or a `Refusal`.',
});
