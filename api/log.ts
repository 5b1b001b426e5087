// The log: one JSON line an event on standard error.
import { pino } from 'pino';

export const log = pino({ name: 'drumkeep', level: process.env['DRUMKEEP_LOG'] ?? 'warn' }, pino.destination(2));
