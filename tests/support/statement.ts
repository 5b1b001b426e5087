// One statement on a PostgreSQL server, such as making a database or dropping it.
import pg from 'pg';

export async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: `${url}/postgres` });
  await client.connect();
  await client.query(statement).finally(() => client.end());
}
