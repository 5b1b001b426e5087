// Asking a lab that is served, as its scripts do.

export interface Served {
  address: string;
  /** Asks the API; throws what it complains of. */
  ask: (query: string, variables?: object) => Promise<Record<string, unknown>>;
  /** Tells an act; throws when it is refused. */
  tell: (mutation: string, input: object) => Promise<Record<string, unknown>>;
  stop: () => Promise<void>;
}

/** How a lab at an address is asked and told. */
export function asked(address: string): Pick<Served, 'ask' | 'tell'> {
  async function ask(query: string, variables: object = {}): Promise<Record<string, unknown>> {
    const response = await fetch(`${address}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ query, variables }),
    });
    const reply = (await response.json()) as { data?: Record<string, unknown>; errors?: { message: string }[] };
    if (reply.errors?.[0]) throw new Error(reply.errors[0].message);
    return reply.data ?? {};
  }
  async function tell(name: string, input: object): Promise<Record<string, unknown>> {
    const type = `${name.charAt(0).toUpperCase()}${name.slice(1)}Input`;
    const answers: Record<string, string> = {
      receiveLot: '... on LotReceived { containers { label } }',
      takePortion: '... on Recorded { made { label } }',
      receiveList: '... on ListReceived { containerCount }',
    };
    const query = `mutation ($input: ${type}!) { ${name}(input: $input) { __typename ... on Refusal { message } ${answers[name] ?? ''} } }`;
    const answer = (await ask(query, { input }))[name] as Record<string, unknown>;
    if (answer['__typename'] === 'Refusal') throw new Error(`${name}: ${String(answer['message'])}`);
    return answer;
  }
  return { ask, tell };
}
