// The HTTP side: who may call, and what goes where.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import { limits } from './builder.ts';
import { receiveFile } from './climate/upload.ts';
import { doorOf } from './door.ts';
import { healthOf } from './health.ts';
import { answerLedger, ledgerEnding } from './ledger/ledger-route.ts';
import { receiveListFile } from './lists/upload.ts';
import { log } from './log.ts';
import { pagesOf } from './pages.ts';
import { answerCalendar, isCalendarPath } from './prep/calendar-route.ts';
import { yogaOf, type App } from './yoga.ts';

function end(response: ServerResponse, status: number, body: unknown): void {
  const text = JSON.stringify(body);
  response.writeHead(status, { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' });
  response.end(text);
}

const hostOf = (value: string): string => value.replace(/:\d+$/, '').toLowerCase();

/**
 * Why a request is turned away, or null. `Host` must be the address we serve (against DNS
 * rebinding) and `Origin`, when a browser sends one, ours (against foreign pages that write).
 */
export function turnedAway(request: IncomingMessage, hosts: string[], scheme: 'http' | 'https'): string | null {
  const host = request.headers.host ?? '';
  if (!hosts.includes(hostOf(host))) return `unknown host: ${host}, one of ${hosts.join(', ')}`;
  const { origin } = request.headers;
  if (origin === undefined) return null;
  const from = URL.canParse(origin) ? new URL(origin) : null;
  if (!from || from.protocol !== `${scheme}:` || from.host.toLowerCase() !== host.toLowerCase())
    return `invalid origin: ${origin}, this server's own pages`;
  return null;
}

function badBody(request: IncomingMessage): { status: number; error: string } | null {
  if (request.method !== 'POST') return null;
  const type = request.headers['content-type'] ?? '';
  if (!/^application\/(json|graphql\+json)\b/i.test(type)) {
    return { status: 415, error: `invalid content-type: ${type || 'none'}, application/json` };
  }
  const length = Number(request.headers['content-length'] ?? 0);
  if (length > limits.bodyBytes)
    return { status: 413, error: `invalid body: ${length} bytes, at most ${limits.bodyBytes}` };
  return null;
}

/** The one HTTP server: `/graphql`, what is handed in and out as files, `/health` and the admin. `adminDir` is where the built admin lies. */
export function serverOf(app: App, adminDir: string): Server {
  const yoga = yogaOf(app);
  const { tls, passPhrase, hostNames } = app.settings;
  const scheme = tls ? 'https' : 'http';
  const letIn = doorOf(passPhrase);
  const pages = pagesOf(adminDir);

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const away = turnedAway(request, hostNames, scheme);
    if (away) return end(response, 403, { error: away });
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    if (path === '/health') return end(response, 200, await healthOf(app));
    if (request.method === 'GET' && isCalendarPath(path, app.lab.settings)) return answerCalendar(app, response);
    if (!(await letIn(request))) {
      response.setHeader('www-authenticate', 'Basic realm="Drumkeep", charset="UTF-8"');
      return end(response, 401, { error: 'missing pass phrase, the one of this lab with any user name' });
    }
    if (path === '/graphql') {
      const bad = badBody(request);
      if (bad) {
        // What is left of the body is not read; the connection goes with it.
        response.setHeader('connection', 'close');
        return end(response, bad.status, { errors: [{ message: bad.error }] });
      }
      await yoga(request, response);
      return;
    }
    if (path === '/files') {
      if (request.method !== 'POST') return end(response, 405, { error: `invalid method: ${request.method}, POST` });
      const { status, body } = await receiveFile(app, request);
      return end(response, status, body);
    }
    if (path === '/lists') {
      if (request.method !== 'POST') return end(response, 405, { error: `invalid method: ${request.method}, POST` });
      const { status, body } = await receiveListFile(app, request);
      return end(response, status, body);
    }
    if (path === '/calendar.ics' && request.method === 'GET') return answerCalendar(app, response);
    const ledger = ledgerEnding(path);
    if (ledger && request.method === 'GET')
      return answerLedger(app, ledger, new URLSearchParams((request.url ?? '').split('?')[1] ?? ''), response);
    if (pages(request, response, path)) return;
    const known = '/graphql, /files, /lists, /ledger.csv, /ledger.json, /calendar.ics, /health';
    end(response, 404, { error: `unknown path: ${path}, ${known} or the admin's pages` });
  }

  const heard = (request: IncomingMessage, response: ServerResponse): void => {
    answer(request, response).catch((error: unknown) => {
      log.error({ err: error, path: request.url }, 'request failed');
      if (!response.headersSent) end(response, 500, { error: 'something went wrong here; it is in the log' });
      else response.destroy();
    });
  };
  return tls ? createSecureServer(tls, heard) : createServer(heard);
}
