// `GET /calendar.ics`, and the same under the secret address for programs that cannot say a pass phrase.
import type { ServerResponse } from 'node:http';
import { contextOf, type App } from '../yoga.ts';
import { calendarOf } from './calendar.ts';

export { isCalendarPath } from './calendar.ts';

export async function answerCalendar(app: App, response: ServerResponse): Promise<void> {
  const text = await calendarOf(await contextOf(app, null));
  response.writeHead(200, {
    'content-type': 'text/calendar; charset=utf-8',
    'cache-control': 'private, max-age=300',
    'content-disposition': 'inline; filename="prep.ics"',
  });
  response.end(text);
}
