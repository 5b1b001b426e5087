// What every screen needs of the lab.
import { question } from './ask.ts';
import { flag, given, instant, many, number, text, word } from './shape.ts';

export const labQuestion = question<Record<string, never>>('Lab')({
  lab: {
    name: text,
    timeZone: text,
    isDemo: flag,
    now: instant,
  },
  people: given('first: 200', { nodes: many({ shortName: text, role: text }) }),
  suppliers: given('first: 200', { nodes: many({ name: text }) }),
  vessels: given('first: 200', { nodes: many({ name: text, volumeMl: number }) }),
  rooms: given('first: 200', { nodes: many({ name: text, kind: word<'ROOM' | 'COLD_STORE' | 'DESICCATOR'>() }) }),
  sorbents: given('first: 200', { nodes: many({ name: text, sorbentClass: text }) }),
});
