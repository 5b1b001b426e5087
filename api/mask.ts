// What a caller may read of an error that nobody meant: an id to ask about, never its inside.
import { GraphQLError } from 'graphql';
import { v7 as newId } from 'uuid';
import { Refused } from './errors.ts';
import { log } from './log.ts';

/** GraphQL's own errors (syntax, validation, limits) pass; a refusal of a query keeps its facts; the rest is logged and masked. */
export function maskedError(error: unknown): GraphQLError {
  if (error instanceof GraphQLError) {
    const cause = error.originalError;
    if (cause instanceof Refused) {
      const { path, expected } = cause;
      return new GraphQLError(cause.message, {
        nodes: error.nodes,
        path: error.path,
        extensions: { code: 'REFUSED', at: path, expected },
      });
    }
    if (!cause || cause instanceof GraphQLError) return error;
  }
  const id = newId();
  log.error({ id, err: error instanceof GraphQLError ? error.originalError : error }, 'unexpected');
  return new GraphQLError(`something went wrong here; nothing was changed. It is logged as ${id}.`, {
    path: error instanceof GraphQLError ? error.path : undefined,
    extensions: { code: 'UNEXPECTED', id },
  });
}
