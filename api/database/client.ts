// The typed client that all services speak to. Its type is SQLite's; PostgreSQL's can do a little more and no less.
import type { Prisma, PrismaClient } from './generated/sqlite/client.ts';

export type Client = PrismaClient;
export type Transaction = Prisma.TransactionClient;
export type Engine = 'sqlite' | 'postgres';
