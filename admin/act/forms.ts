// The forms of a container's events, in the order of their buttons.
import type { Line } from '../fields.ts';
import { lids } from './choices.ts';
import type { Names, ActSpec } from './spec.ts';
import { amountOf } from './amount.ts';
import { taking } from './taking.ts';
import { weighing } from './weighing.ts';

/** What one does every day, in the order of the buttons. */
export function everyday(of: Line, names: Names): ActSpec[] {
  const lid: ActSpec = of.isOpen
    ? {
        name: 'closeContainer',
        title: 'Close',
        record: 'Close it',
        atOnce: true,
        fields: [
          {
            name: 'closure',
            label: 'How',
            kind: 'choice',
            choices: lids,
            initial: of.usualClosure === 'OPEN' ? 'WELL_CLOSED' : of.usualClosure,
          },
        ],
      }
    : { name: 'openContainer', title: 'Open', record: 'Open it', atOnce: true, fields: [] };
  const move: ActSpec = {
    name: 'moveContainer',
    title: 'Move',
    record: 'Move it',
    fields: [
      { name: 'room', label: 'To', kind: 'choice', choices: names.rooms.filter(({ value }) => value !== of.room.name) },
    ],
  };
  const count: ActSpec = {
    name: 'recordCount',
    title: 'Count',
    record: 'Record count',
    fields: [amountOf(of)],
    caution: 'The book bends to the shelf: what you find is what counts.',
  };
  return [lid, taking(of, names), weighing, move, count];
}
