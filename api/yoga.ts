// The GraphQL server: Yoga with its defaults made safe, compiled execution and GraphiQL served by ourselves.
import { renderGraphiQL } from '@graphql-yoga/render-graphiql';
import { createYoga, type YogaServerInstance } from 'graphql-yoga';
import { compiledExecution } from './compiled.ts';
import type { Context } from './context.ts';
import type { Database } from './database/database.ts';
import type { Lab } from './database/generated/sqlite/client.ts';
import { exampleQueries } from './examples.ts';
import { loadersOf } from './loaders.ts';
import { maskedError } from './mask.ts';
import { schema } from './schema.ts';
import type { Settings } from './settings.ts';

/** What lives as long as the server does. */
export interface App {
  settings: Settings;
  database: Database;
  lab: Lab;
  now: () => Date;
}

/** A header's text without its percent-encoding; as it is when that is broken. */
function decoded(text: string | null): string | null {
  try {
    return text && decodeURIComponent(text);
  } catch {
    return text;
  }
}

/**
 * The context of one request; `shortName` is who acts, as the header `Drumkeep-Person` says, percent-encoded where it
 * has letters that a header cannot carry. A name that nobody in the lab has may read, and is refused when it writes.
 */
export async function contextOf(app: App, shortName: string | null): Promise<Context> {
  const { database, lab, settings, now } = app;
  const actor = shortName
    ? await database.read.person.findUnique({ where: { labId_shortName: { labId: lab.id, shortName } } })
    : null;
  return { lab, actor, actorName: shortName, database, settings, now, load: loadersOf(database.read) };
}

export type Yoga = YogaServerInstance<Record<string, never>, Context>;

/** The GraphQL server; `isCompiled` false interprets every operation, which benches compare. */
export function yogaOf(app: App, { isCompiled = true } = {}): Yoga {
  return createYoga<Record<string, never>, Context>({
    schema,
    cors: false,
    landingPage: false,
    logging: false,
    graphiql: { title: 'Drumkeep', defaultQuery: exampleQueries },
    renderGraphiQL,
    maskedErrors: { maskError: (error) => maskedError(error) },
    context: ({ request }) => contextOf(app, decoded(request.headers.get('drumkeep-person'))),
    plugins: isCompiled ? [compiledExecution()] : [],
  });
}
