// Read by Prisma's own command line: which engine's models and migrations it works on.
// DRUMKEEP_ENGINE=postgres picks the second engine; DATABASE_URL is only needed by commands that connect.
import { defineConfig } from 'prisma/config';

const engine = process.env['DRUMKEEP_ENGINE'] === 'postgres' ? 'postgres' : 'sqlite';

export default defineConfig({
  schema: `../prisma/${engine}`,
  migrations: { path: `../prisma/migrations/${engine}` },
  datasource: { url: process.env['DATABASE_URL'] ?? 'file:../.data/drumkeep.sqlite' },
});
