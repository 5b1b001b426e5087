// Builds a lab in a line, and speaks to it as a script would: through the GraphQL server, by name.
import { graphql } from 'graphql';
import type { Database } from '../../api/database/database.ts';
import { readSettings } from '../../api/settings.ts';
import { schema } from '../../api/schema.ts';
import { newId } from '../../api/work.ts';
import { contextOf, yogaOf, type App } from '../../api/yoga.ts';

/** Where the clock of a new world stands. */
export const noon = new Date('2026-03-02T12:00:00Z');

export interface Refusal {
  message: string;
  path: string;
  expected: string;
}

/** A container as tests look at it. */
export interface Seen {
  id: string;
  label: string;
  dryGrams: number;
  freeDryGrams: number;
  dryGramsAssumed: boolean;
  isOpen: boolean;
  openedAt: string | null;
  closure: string;
  finishedAt: string | null;
  plates?: number;
}

export interface Recorded {
  event: { id: string; sentence: string; at: string };
  container: Seen;
  made: Seen | null;
  notes: string[];
}

type Input = Record<string, unknown>;

export const seen =
  'id label dryGrams freeDryGrams dryGramsAssumed isOpen openedAt closure finishedAt ... on PlateBox { plates }';

/** What is asked of a success type when nothing else is. */
const usually: Record<string, string> = {
  Recorded: `event { id sentence at } container { ${seen} } made { ${seen} } notes`,
  LotReceived: `lot { id lotNumber dryGrams } containers { ${seen} } notes`,
  DryingRequest: 'id state position',
  Held: `hold { id } container { ${seen} }`,
};

const titled = (name: string): string => `${name[0]?.toUpperCase()}${name.slice(1)}`;

function successType(mutation: string): string {
  const union = schema.getType(`${titled(mutation)}Result`);
  const types = union && 'getTypes' in union ? union.getTypes() : [];
  const success = types.find(({ name }) => name !== 'Refusal');
  if (!success) throw new Error(`there is no mutation ${mutation}`);
  return success.name;
}

interface Answered {
  data?: unknown;
  errors?: { message: string; extensions?: Input }[];
}

/** As it travels: instants as text. */
const iso = (value: Input): Input => JSON.parse(JSON.stringify(value)) as Input;

/**
 * A new and empty lab on a database, with a clock that a test moves by hand. Without estimates, exposures stay as
 * they are made, for tests that tell very much.
 */
export async function newWorld(database: Database, { estimates = true, now = noon } = {}) {
  let clock = now;
  const lab = await database.write((tx) =>
    tx.lab.create({
      data: { id: newId(), name: newId(), timeZone: 'Europe/Helsinki', isDemo: false, settings: {}, createdAt: now },
    }),
  );
  const app: App = { settings: readSettings({}), database, lab, now: () => clock };
  const yoga = yogaOf(app);

  /** The server's answer as it travels. */
  async function post(query: string, variables: Input = {}, headers: Record<string, string> = {}): Promise<Answered> {
    if (!estimates) {
      const contextValue = { ...(await contextOf(app, null)), estimateLater: true };
      const { data, errors } = await graphql({ schema, source: query, variableValues: iso(variables), contextValue });
      return {
        data,
        ...(errors && { errors: errors.map((error) => ({ message: error.originalError?.stack ?? error.message })) }),
      };
    }
    const response = await yoga.fetch('http://localhost/graphql', {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: JSON.stringify({ query, variables: iso(variables) }),
    });
    return (await response.json()) as Answered;
  }

  async function ask<Data>(query: string, variables: Input = {}): Promise<Data> {
    const { data, errors } = await post(query, variables);
    if (errors) throw new Error(errors.map(({ message }) => message).join('; '));
    return data as Data;
  }

  async function answerTo(mutation: string, input: Input, fields?: string) {
    const success = successType(mutation);
    const { answer } = await ask<{ answer: { __typename: string } & Partial<Refusal> }>(
      `mutation ($input: ${titled(mutation)}Input!) { answer: ${mutation}(input: $input) { __typename
        ... on ${success} { ${fields ?? usually[success] ?? '__typename'} }
        ... on Refusal { message path expected } } }`,
      { input },
    );
    return answer;
  }

  /** Tells the lab something that it must take. */
  async function tell<Answer = Recorded>(mutation: string, input: Input, fields?: string): Promise<Answer> {
    const answer = await answerTo(mutation, input, fields);
    if (answer.__typename === 'Refusal') throw new Error(answer.message);
    return answer as Answer;
  }

  /** Tells the lab something that it must refuse. */
  async function refused(mutation: string, input: Input): Promise<Refusal> {
    const answer = await answerTo(mutation, input);
    if (answer.__typename !== 'Refusal') throw new Error(`${mutation} was not refused`);
    const { message = '', path = '', expected = '' } = answer;
    return { message, path, expected };
  }

  const world = {
    app,
    yoga,
    database,
    post,
    ask,
    tell,
    refused,
    context: () => contextOf(app, null),
    now: () => clock,
    /** Moves the clock on, and gives its new time. */
    later: (minutes: number): Date => (clock = new Date(clock.getTime() + minutes * 60_000)),
    /** So many minutes before now. */
    ago: (minutes: number): Date => new Date(clock.getTime() - minutes * 60_000),
    /** A room, a sorbent and a supplier to begin with. */
    async furnished(): Promise<void> {
      await tell('addRoom', { name: 'wet bench', assumedHumidityPercent: 45, assumedTemperatureC: 22 }, '__typename');
      await tell('addRoom', { name: 'cold store', kind: 'COLD_STORE' }, '__typename');
      await tell('addSorbent', { name: 'Silica 40–63 µm', sorbentClass: 'silica' }, '__typename');
      await tell('addSupplier', { name: 'Marlpit Chemicals' }, '__typename');
    },
    /** A lot of silica that came in a week ago with 0 % water; gives its containers. */
    async came(containers: Input[], lot: Input = {}): Promise<Seen[]> {
      const received = await tell<{ containers: Seen[] }>('receiveLot', {
        sorbent: 'Silica 40–63 µm',
        lotNumber: newId().slice(-12),
        receivedAt: world.ago(7 * 24 * 60),
        certificateWaterPercent: 0,
        ...lot,
        containers: containers.map((one) => ({ room: 'wet bench', ...one })),
      });
      return received.containers;
    },
    /** One dry drum of so many grams. */
    async drum(grams = 1000, more: Input = {}, lot: Input = {}): Promise<Seen> {
      const drum = { kind: 'DRUM', grams, innerDiameterMm: 120, heightMm: 250, ...more };
      return only(await world.came([drum], lot));
    },
    /** A box of glass plates. */
    async plates(count = 25, more: Input = {}): Promise<Seen> {
      return only(await world.came([{ kind: 'PLATE_BOX', plates: count, ...more }]));
    },
    /** A container as it stands now. */
    async look(label: string): Promise<Seen> {
      const { container } = await ask<{ container: Seen | null }>(
        `query ($label: String!) { container(label: $label) { ${seen} } }`,
        { label },
      );
      if (!container) throw new Error(`no container ${label}`);
      return container;
    },
  };
  return world;
}

function only<One>(some: One[]): One {
  const [one] = some;
  if (!one) throw new Error('nothing came in');
  return one;
}

export type World = Awaited<ReturnType<typeof newWorld>>;
