// The one door to the API: questions are asked, acts are told, files are handed in.
import { fieldsText, type Answer, type Fields } from './shape.ts';

/** A query with what it needs (`V`) and what it answers (`S`). */
export interface Question<V, S> {
  readonly text: string;
  readonly shape: S;
  readonly needs?: V;
}

/** `variables` as GraphQL declares them: `$label: String!`. */
export function question<V extends object>(name: string, variables = '') {
  return <S extends Fields>(shape: S): Question<V, S> => ({
    text: `query ${name}${variables ? `(${variables})` : ''} { ${fieldsText(shape)} }`,
    shape,
  });
}

/** A refusal: what is wrong, where in the input, and what would be right. */
export interface Refusal {
  message: string;
  path: string;
  expected: string;
  /** Everything that is wrong, by line, where that was asked for. */
  problems?: { line: number | null; message: string; expected?: string }[];
}

/** Nobody answered: the server or the network is gone. */
export class Unreachable extends Error {
  override readonly name = 'Unreachable';
  /** The request may have arrived: there was a network when it went out. */
  readonly hasLeft: boolean;
  constructor(message: string, hasLeft = true) {
    super(message);
    this.hasLeft = hasLeft;
  }
}
/** The server answered that it cannot; the message is its own. */
export class Failed extends Error {
  override readonly name = 'Failed';
}

interface Reply {
  data?: unknown;
  errors?: { message: string }[];
}

/** Who acts, as chosen on this machine: the short name sent with every request. */
let actor = '';
export const actAs = (shortName: string): void => {
  actor = shortName;
};

/** Who that is now; nobody's when it is empty. */
export const acting = (): string => actor;

const headers = (by: string): Record<string, string> => (by ? { 'drumkeep-person': encodeURIComponent(by) } : {});

/** How long an answer is waited for, ms; what was told may have arrived all the same. */
const PATIENCE_MS = { ask: 30_000, tell: 12_000 };

type Hearing = (answers: boolean) => void;
const hearing = new Set<Hearing>();

/** Hears after each attempt whether the server answers; returns how to stop. */
export function onHeard(listener: Hearing): () => void {
  hearing.add(listener);
  return () => hearing.delete(listener);
}
const heard = (answers: boolean): void => hearing.forEach((listener) => listener(answers));

const isReply = (body: unknown): body is Reply =>
  typeof body === 'object' && body !== null && ('data' in body || 'errors' in body);

interface Sending {
  signal?: AbortSignal | undefined;
  by?: string | undefined;
  patienceMs: number;
}

async function post(query: string, variables: object, { signal, by, patienceMs }: Sending): Promise<unknown> {
  const patience = AbortSignal.timeout(patienceMs);
  const wasOffline = !navigator.onLine;
  let status: number;
  let text: string;
  try {
    const response = await fetch('/graphql', {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json', ...headers(by ?? actor) },
      body: JSON.stringify({ query, variables }),
      signal: signal ? AbortSignal.any([signal, patience]) : patience,
    });
    status = response.status;
    text = await response.text();
  } catch (error) {
    if (signal?.aborted) throw error;
    heard(false);
    throw new Unreachable('the server does not answer', !(wasOffline && !navigator.onLine));
  }
  heard(true);
  const reply = jsonIn(text);
  // Somebody between us and the server answered for it, or it broke off.
  if (!isReply(reply)) throw new Failed(`the server answered ${status}, and nothing that can be read`);
  const problem = reply.errors?.[0]?.message;
  if (problem !== undefined) throw new Failed(problem);
  return reply.data;
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

export async function ask<V extends object, S>(
  asked: Question<V, S>,
  variables: V,
  signal?: AbortSignal,
): Promise<Answer<S>> {
  return (await post(asked.text, variables, { signal, patienceMs: PATIENCE_MS.ask })) as Answer<S>;
}

export type Told<A> = { done: A; refused: null } | { done: null; refused: Refusal };

/** The mutation's text: its name, the fields of its success type, and what of a refusal is asked besides the usual. */
export function actText(name: string, success: string, fields: Fields, refusal = ''): string {
  const input = `${name.charAt(0).toUpperCase()}${name.slice(1)}Input`;
  const answer = `__typename ... on ${success} { ${fieldsText(fields)} } ... on Refusal { message path expected${refusal} }`;
  return `mutation Act($input: ${input}!) { ${name}(input: $input) { ${answer} } }`;
}

/** Tells an act once: the same `clientKey` again returns the first answer. `by` acts, or who is chosen on this machine. */
export async function tell<A>(
  name: string,
  text: string,
  input: object,
  clientKey: string,
  by?: string,
  patienceMs: number = PATIENCE_MS.tell,
): Promise<Told<A>> {
  const sending = { by, patienceMs };
  const data = (await post(text, { input: { ...input, clientKey } }, sending)) as Record<string, unknown>;
  const answer = data[name] as ({ __typename: 'Refusal' } & Refusal) | ({ __typename: string } & A);
  if (answer.__typename === 'Refusal') return { done: null, refused: answer as Refusal };
  return { done: answer as A, refused: null };
}

/** Hands in a file's bytes as they are; `onProgress` hears the share that is up. Answers the server's JSON. */
export function handIn(
  file: File,
  onProgress: (share: number) => void,
  to: '/files' | '/lists' = '/files',
): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', to);
    request.setRequestHeader('x-file-name', encodeURIComponent(file.name));
    request.setRequestHeader('content-type', 'application/octet-stream');
    request.responseType = 'json';
    request.upload.onprogress = (event) => onProgress(event.lengthComputable ? event.loaded / event.total : 0);
    request.onerror = () => reject(new Unreachable('the server does not answer'));
    request.onload = () => {
      const reply: unknown = request.response;
      if (request.status < 400) resolve(reply);
      else reject(new Failed(refusalIn(reply) ?? `the server answered ${request.status}`));
    };
    request.send(file);
  });
}

function refusalIn(reply: unknown): string | null {
  if (typeof reply !== 'object' || reply === null) return null;
  const { error, message } = reply as { error?: unknown; message?: unknown };
  return typeof error === 'string' ? error : typeof message === 'string' ? message : null;
}

/** What to show when an answer did not come, as a person would say it. */
export function problemWords(error: unknown): string {
  if (error instanceof Unreachable) {
    return 'Drumkeep does not answer. Nothing was lost; it is tried again by itself. Is the machine that runs it switched on?';
  }
  if (error instanceof Failed) return error.message;
  return 'Something went wrong on this page. Nothing was lost; reload it and try again.';
}

/** What to show when an act did not arrive. */
export function untoldWords(error: unknown): string {
  return error instanceof Unreachable
    ? 'Not recorded: Drumkeep does not answer. Nothing that was typed is lost; press again once it does, it is written once.'
    : problemWords(error);
}
