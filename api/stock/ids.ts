// Ids that travel: base64 of the type's name and the row's key, as Relay clients expect. A bare key is taken too.
import { invalid } from '../errors.ts';

const key = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

export const globalId = (type: string, id: string): string => Buffer.from(`${type}:${id}`).toString('base64');

/** The row's key in an id of one of these types; refuses an id of another type. */
export function localId(type: string, id: string, path: string): string {
  if (key.test(id)) return id;
  const [named, local] = Buffer.from(id, 'base64').toString('utf8').split(':');
  if (named !== type || local === undefined || !key.test(local)) throw invalid(path, id, `the id of a ${type}`);
  return local;
}
