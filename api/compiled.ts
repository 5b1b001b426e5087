// Compiled execution of operations that come again.
import { execute, type DocumentNode, type ExecutionArgs } from 'graphql';
import { compileQuery, isCompiledQuery, type CompiledQuery } from 'graphql-jit';
import type { Plugin } from 'graphql-yoga';

/**
 * Runs an operation as compiled code (graphql-jit) from its second sighting on: compiling costs
 * milliseconds, so what is asked once is interpreted. Documents are the parser cache's own
 * objects, so that the same text is the same key.
 */
export function compiledExecution(): Plugin {
  const seen = new WeakSet<DocumentNode>();
  const compiled = new WeakMap<DocumentNode, Map<string, CompiledQuery | null>>();

  function compiledOf(args: ExecutionArgs): CompiledQuery | null {
    const name = args.operationName ?? '';
    const byName = compiled.get(args.document) ?? new Map<string, CompiledQuery | null>();
    compiled.set(args.document, byName);
    const before = byName.get(name);
    if (before !== undefined) return before;
    const made = compileQuery(args.schema, args.document, args.operationName ?? undefined);
    const query = isCompiledQuery(made) ? made : null;
    byName.set(name, query);
    return query;
  }

  return {
    onExecute({ args, setExecuteFn }) {
      const document = args.document as DocumentNode;
      if (!seen.has(document)) {
        seen.add(document);
        return;
      }
      const query = compiledOf(args);
      setExecuteFn((given: ExecutionArgs) =>
        query ? query.query(given.rootValue, given.contextValue, given.variableValues ?? {}) : execute(given),
      );
    },
  };
}
