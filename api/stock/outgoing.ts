// Ways of the events by which sorbent or plates leave a container.
import { z } from 'zod';
import { everything, leaving } from './leaving.ts';
import { said } from './said.ts';
import { waterAt } from './water.ts';
import { way } from './way.ts';

const amount = { grams: said.grams, basis: said.basis, plates: said.plates };

/** A scoop implies that the lid was off for about so long (product paper, "Lean at the bench"). */
const scoopMinutes = 5;

const opening = {
  leftOpen: z
    .boolean()
    .nullish()
    .transform((open) => open ?? false),
  openMinutes: said.minutes.nullish().transform((minutes) => minutes ?? scoopMinutes),
};

/** The container that is filled: where it stands and how it is shut from then on. */
const filled = { roomId: z.string(), closure: said.closure };

/** How a column was packed; its water is estimated when it is written down. */
export const packingSaid = z.object({
  method: z.enum(['DRY', 'SLURRY'], 'DRY or SLURRY').nullish().default(null),
  tapping: said.text,
  flowMlPerMin: said.ml.nullish().default(null),
  pressureBar: z.number('bar').min(0, '0 bar or more').max(1000, 'at most 1000 bar').nullish().default(null),
  packer: said.text,
  dyeTest: said.text,
});

export const outgoing = {
  PORTION_TAKEN: way(
    'PORTION_TAKEN',
    z.object({ ...amount, ...opening, ...filled, scooping: said.scooping.nullish().default(null) }),
    async (scene, { roomId, closure, leftOpen, openMinutes, scooping, ...what }) => {
      const { detail, ...rest } = await leaving(scene, what);
      return { ...rest, detail: { ...detail, leftOpen, openMinutes, scooping, into: { roomId, closure } } };
    },
  ),
  PLATES_TAKEN: way(
    'PLATES_TAKEN',
    z.object({ ...amount, ...opening, ...filled }),
    async (scene, { roomId, closure, leftOpen, openMinutes, ...what }) => {
      const { dryGrams, plates, notes } = await leaving(scene, what);
      return { dryGrams, plates, notes, detail: { leftOpen, openMinutes, into: { roomId, closure } } };
    },
  ),
  COLUMN_PACKED: way(
    'COLUMN_PACKED',
    z.object({ ...amount, ...opening, ...filled, packing: packingSaid.nullish() }),
    async (scene, { roomId, closure, leftOpen, openMinutes, packing, ...what }) => {
      const { detail, ...rest } = await leaving(scene, what);
      const told = { ...detail, leftOpen, openMinutes, into: { roomId, closure } };
      if (!packing) return { ...rest, detail: told };
      const { waterFraction, assumed } = await waterAt(scene.work.tx, scene.container, scene.at);
      return { ...rest, detail: { ...told, packing: { ...packing, waterFraction, waterAssumed: assumed } } };
    },
  ),
  /** Without grams: all that is in it. */
  COMBINED: way('COMBINED', z.object({ ...amount, ...opening }), async (scene, { leftOpen, openMinutes, ...what }) => {
    const all = what.grams === null && what.plates === null;
    const { detail, ...rest } = await (all ? everything(scene) : leaving(scene, what));
    return { ...rest, detail: { ...detail, leftOpen, openMinutes } };
  }),
  LOST: way('LOST', z.object({ ...amount, why: said.text }), async (scene, { why, ...what }) => {
    const { detail, ...rest } = await leaving(scene, what);
    return { ...rest, detail: { ...detail, why } };
  }),
  SPENT_ON_CHECK: way('SPENT_ON_CHECK', z.object({ ...amount, what: said.text }), async (scene, said) => {
    const { what, ...amounts } = said;
    const { detail, ...rest } = await leaving(scene, amounts);
    return { ...rest, detail: { ...detail, what } };
  }),
  /** Without an amount: all of it. */
  DISCARDED: way('DISCARDED', z.object({ ...amount, why: said.text }), async (scene, { why, ...what }) => {
    const all = what.grams === null && what.plates === null;
    const { detail, ...rest } = await (all ? everything(scene) : leaving(scene, what));
    return { ...rest, detail: { ...detail, all, why } };
  }),
  USED_UP: way('USED_UP', z.object({}), async (scene) => {
    const { dryGrams, plates } = await everything(scene);
    return { dryGrams, plates, detail: {} };
  }),
};
