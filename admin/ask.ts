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
}

/** Nobody answered: the server or the network is gone. */
export class Unreachable extends Error {
  override readonly name = 'Unreachable';
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

const headers = (): Record<string, string> => (actor ? { 'drumkeep-person': encodeURIComponent(actor) } : {});

async function post(query: string, variables: object, signal: AbortSignal | undefined): Promise<unknown> {
  let response: Response;
  let reply: Reply;
  try {
    response = await fetch('/graphql', {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json', ...headers() },
      body: JSON.stringify({ query, variables }),
      signal: signal ?? null,
    });
    reply = (await response.json()) as Reply;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    throw new Unreachable('the server does not answer');
  }
  const problem = reply.errors?.[0]?.message;
  if (problem !== undefined) throw new Failed(problem);
  return reply.data;
}

export async function ask<V extends object, S>(
  asked: Question<V, S>,
  variables: V,
  signal?: AbortSignal,
): Promise<Answer<S>> {
  return (await post(asked.text, variables, signal)) as Answer<S>;
}

export type Told<A> = { done: A; refused: null } | { done: null; refused: Refusal };

/** The mutation's text: its name, and the fields of its success type. */
export function actText(name: string, success: string, fields: Fields): string {
  const input = `${name.charAt(0).toUpperCase()}${name.slice(1)}Input`;
  const answer = `__typename ... on ${success} { ${fieldsText(fields)} } ... on Refusal { message path expected }`;
  return `mutation Act($input: ${input}!) { ${name}(input: $input) { ${answer} } }`;
}

/** Tells an act once: the same `clientKey` again returns the first answer. */
export async function tell<A>(name: string, text: string, input: object, clientKey: string): Promise<Told<A>> {
  const data = (await post(text, { input: { ...input, clientKey } }, undefined)) as Record<string, unknown>;
  const answer = data[name] as ({ __typename: 'Refusal' } & Refusal) | ({ __typename: string } & A);
  if (answer.__typename === 'Refusal') return { done: null, refused: answer as Refusal };
  return { done: answer as A, refused: null };
}

/** Hands in a file's bytes as they are; `onProgress` hears the share that is up. Answers the server's JSON. */
export function handIn(file: File, onProgress: (share: number) => void): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', '/files');
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
