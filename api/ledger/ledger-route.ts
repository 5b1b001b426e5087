// `GET /ledger.csv` and `GET /ledger.json`: the ledger for spreadsheets and scripts.
import type { ServerResponse } from 'node:http';
import { Refused } from '../errors.ts';
import { contextOf, type App } from '../yoga.ts';
import { csvOf, ledgerTable } from './table.ts';

const types = { csv: 'text/csv; charset=utf-8', json: 'application/json; charset=utf-8' } as const;
const isEnding = (ending: string | undefined): ending is keyof typeof types => ending === 'csv' || ending === 'json';

/** The ending under which a path asks for the ledger; null when it is another path. */
export function ledgerEnding(path: string): keyof typeof types | null {
  const ending = /^\/ledger\.(csv|json)$/.exec(path)?.[1];
  return isEnding(ending) ? ending : null;
}

function sent(response: ServerResponse, status: number, type: string, body: string, more: Record<string, string> = {}) {
  response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store', ...more });
  response.end(body);
}

export async function answerLedger(
  app: App,
  ending: keyof typeof types,
  asked: URLSearchParams,
  response: ServerResponse,
): Promise<void> {
  try {
    const rows = await ledgerTable(await contextOf(app, null), asked);
    const body = ending === 'csv' ? csvOf(rows) : JSON.stringify(rows);
    const name = { 'content-disposition': `attachment; filename="ledger.${ending}"` };
    sent(response, 200, types[ending], body, ending === 'csv' ? name : {});
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    sent(response, 400, types.json, JSON.stringify({ error: error.message }));
  }
}
