// Whom and what a list means by a name: one of ours, a new one to be made, or a question.
import { classMeant } from './fields.ts';
import { nearest, sameAs } from './names.ts';
import { answerTo, type Answers, type Choice, type Question } from './questions.ts';

export type Named = 'SORBENT' | 'SUPPLIER' | 'ROOM' | 'VESSEL';

export interface Known {
  sorbents: readonly string[];
  suppliers: readonly string[];
  rooms: readonly string[];
  /** The lab's vessels, and common ones that can be had for the asking. */
  vessels: readonly { name: string; volumeMl: number }[];
  /** Codes until now that are on the book, in small letters, with the label of their container. */
  oldCodes: ReadonlyMap<string, string>;
  /** `sorbent⁄lot` in small letters, with the number of containers of it that are there. */
  lots: ReadonlyMap<string, number>;
  now: Date;
  timeZone: string;
}

/** Something the lab does not have yet and somebody said to make. `as` is a class, or a kind of room. */
export interface Make {
  what: 'SORBENT' | 'SUPPLIER' | 'ROOM';
  name: string;
  as: string;
}

const word: Record<Named, string> = { SORBENT: 'sorbent', SUPPLIER: 'supplier', ROOM: 'room', VESSEL: 'vessel' };
const classes = ['silica', 'alumina', 'c18', 'magnesium silicate', 'cellulose'];

/** What nobody is delivered anything in. */
const isOpenWare = (vessel: string): boolean => /^(beaker|crystallising dish|drying tray)/i.test(vessel);

/** Loosely poured sorbent, g/mL: common practice, for the offer of a vessel only. */
const pouredGramsPerMl = 0.45;

function makeChoices(what: Named, said: string): Choice[] {
  if (what === 'VESSEL') return [];
  if (what === 'SUPPLIER')
    return [
      { answer: 'make', words: `make it: a supplier “${said}”` },
      { answer: 'nobody', words: 'leave the supplier open' },
    ];
  if (what === 'ROOM')
    return [
      { answer: 'make:ROOM', words: `make it: a room “${said}”` },
      { answer: 'make:COLD_STORE', words: `make it: a cold store “${said}”` },
      { answer: 'make:DESICCATOR', words: `make it: a desiccator “${said}”` },
    ];
  const first = classMeant(said);
  const ordered = first === null ? classes : [first, ...classes.filter((one) => one !== first)];
  return [...ordered, 'other'].map((one) => ({
    answer: `make:${one}`,
    words:
      one === 'other' ? 'make it: of a class of its own, its numbers unknown' : `make it: a sorbent “${said}”, ${one}`,
  }));
}

const isOurs = (name: string): Choice => ({ answer: `is:${name}`, words: `it is “${name}”, one of ours` });

/** Resolves the names of one list, collecting what is to be asked and to be made. */
export function resolver(known: Known, answers: Answers) {
  const questions = new Map<string, Question>();
  const makes = new Map<string, Make>();
  const ours: Record<Named, readonly string[]> = {
    SORBENT: known.sorbents,
    SUPPLIER: known.suppliers,
    ROOM: known.rooms,
    VESSEL: known.vessels.map(({ name }) => name),
  };

  function ask(key: string, about: string, choices: Choice[]): void {
    if (!questions.has(key)) questions.set(key, { key, about, choices });
  }

  const met = new Map<string, string | null | undefined>();

  /** The name to book; undefined while it is asked for, null for "leave it open". Said a thousand times, it is looked up once. */
  function named(what: Named, said: string): string | null | undefined {
    const key = `${what}:${said}`;
    if (!met.has(key)) met.set(key, lookedUp(what, said));
    return met.get(key);
  }

  function lookedUp(what: Named, said: string): string | null | undefined {
    const same = sameAs(said, ours[what]);
    if (same !== null) return same;
    const key = `name:${what}:${said.toLowerCase()}`;
    const answer = answerTo(answers, key);
    if (answer?.startsWith('is:')) {
      const meant = sameAs(answer.slice(3), ours[what]);
      if (meant !== null) return meant;
    }
    if (answer === 'nobody' && what === 'SUPPLIER') return null;
    if (answer?.startsWith('make') && what !== 'VESSEL') {
      const as = answer.slice('make:'.length);
      const before = makes.get(key);
      if (before) return before.name;
      makes.set(key, { what, name: said, as: as === 'other' ? said.toLowerCase() : as });
      return said;
    }
    const near = nearest(said, ours[what]);
    const rest = ours[what].filter((name) => !near.includes(name));
    const choices = [...near.map(isOurs), ...makeChoices(what, said), ...rest.slice(0, 60).map(isOurs)];
    ask(key, `Which ${word[what]} is “${said}”?`, choices);
    return undefined;
  }

  /** The vessel of packs that the list says nothing of, asked once for each size. */
  function vesselFor(grams: number): string | undefined {
    const key = `vessel:${grams}`;
    const answer = answerTo(answers, key);
    const meant = answer?.startsWith('is:') ? sameAs(answer.slice(3), ours.VESSEL) : null;
    if (meant !== null) return meant;
    const needMl = grams / pouredGramsPerMl;
    const bySize = [...known.vessels].sort((one, other) => one.volumeMl - other.volumeMl);
    const fits = ({ volumeMl }: { volumeMl: number }): boolean => volumeMl >= needMl;
    const fitting = bySize.filter((vessel) => fits(vessel) && !isOpenWare(vessel.name));
    const smaller = bySize.filter((vessel) => !fits(vessel) || isOpenWare(vessel.name)).reverse();
    const choices = [...fitting, ...smaller].map(({ name }) => ({ answer: `is:${name}`, words: name }));
    ask(key, `In what do ${Number(grams.toPrecision(6))} g stand?`, choices);
    return undefined;
  }

  return { named, vesselFor, ask, questions, makes };
}

export type Resolver = ReturnType<typeof resolver>;
