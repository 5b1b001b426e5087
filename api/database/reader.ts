// Reading by hand-written statements on either engine, and the few words in which the engines differ.
import type { Engine } from './client.ts';
import type { Database } from './database.ts';

/** All that hand-written reading needs; a `Database` is one, and so is a worker's own read-only connection. */
export type Reader = Pick<Database, 'engine' | 'select'>;

/** A table expression of one column `id` from a parameter that holds a JSON list of keys. */
export function idsIn(engine: Engine, parameter: string): string {
  return engine === 'sqlite'
    ? `(select value as "id" from json_each(${parameter}))`
    : `(select value as "id" from json_array_elements_text(${parameter}::json))`;
}

/** A table expression of `id` and `ms` (milliseconds since 1970) from a parameter that holds a JSON list of such pairs. */
export function instantsIn(engine: Engine, parameter: string): string {
  return engine === 'sqlite'
    ? `(select value ->> 0 as "id", value ->> 1 as "ms" from json_each(${parameter}))`
    : `(select value ->> 0 as "id", to_timestamp((value ->> 1)::double precision / 1000.0) at time zone 'UTC' as "ms"
        from json_array_elements(${parameter}::json))`;
}

/** An instant given as a parameter in milliseconds since 1970, comparable with a time column. */
export function instant(engine: Engine, parameter: string): string {
  return engine === 'sqlite' ? parameter : `(to_timestamp(${parameter}::double precision / 1000.0) at time zone 'UTC')`;
}

/** A JSON column's value: text on SQLite, read already on PostgreSQL. */
export function jsonOf(value: unknown): unknown {
  return typeof value === 'string' ? (JSON.parse(value) as unknown) : value;
}
