// Reads a list in a test: bytes or text, a lab that has little, and the answers given.
import { readFileSync } from 'node:fs';
import { listIn } from '../../api/lists/read.ts';
import type { Answers } from '../../api/lists/questions.ts';
import type { Known } from '../../api/lists/resolve.ts';
import { understand, type Understood } from '../../api/lists/understood.ts';
import { commonVessels } from '../../api/stock/service.ts';

export const littleLab: Known = {
  sorbents: ['Silica 40–63 µm', 'Alumina, neutral'],
  suppliers: ['Marlpit Chemicals', 'Osier & Tarn'],
  rooms: ['wet bench', 'cold store'],
  vessels: commonVessels,
  oldCodes: new Map(),
  lots: new Map(),
  now: new Date('2026-06-10T12:00:00Z'),
  timeZone: 'Europe/Helsinki',
};

export const given = (answers: Record<string, string>, columns: Answers['columns'] = []): Answers => ({
  columns,
  given: Object.entries(answers).map(([question, answer]) => ({ question, answer })),
});

export const fixture = (name: string): Uint8Array =>
  readFileSync(new URL(`../../fixtures/lists/${name}`, import.meta.url));

export async function read(
  list: string | Uint8Array,
  answers: Record<string, string> = {},
  { columns = [], known = {} }: { columns?: Answers['columns']; known?: Partial<Known> } = {},
): Promise<Understood> {
  const sheets = await listIn(typeof list === 'string' ? new TextEncoder().encode(list) : list);
  if ('is' in sheets) throw new Error(`this is ${sheets.is}, ${sheets.expected}`);
  return understand(sheets, given(answers, columns), { ...littleLab, ...known });
}

/** The questions, as keys. */
export const asked = ({ questions }: Understood): string[] => questions.map(({ key }) => key);
