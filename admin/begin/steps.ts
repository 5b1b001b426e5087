// The three steps of a beginning, and how far each is.
import { count } from '../say/words.ts';
import type { Begun } from './questions.ts';

export interface Step {
  title: string;
  why: string;
  isDone: boolean;
  /** How it stands, in a few words; empty before it was begun. */
  stands: string;
  ways: { to: string; words: string }[];
}

export function stepsOf({ lab, rooms }: Begun): Step[] {
  const { nodes } = rooms;
  const read = nodes.filter(({ lastReadingAt }) => lastReadingAt !== null).length;
  const airless = nodes.filter(
    ({ lastReadingAt, assumedHumidityPercent }) => lastReadingAt === null && assumedHumidityPercent === null,
  );
  const { containers } = lab.counts;
  return [
    {
      title: 'Your rooms and their air',
      why: 'The air is what makes sorbent wet. Name the rooms, then drop the file of each room’s logger, just as it wrote it.',
      isDone: nodes.length > 0 && airless.length === 0,
      stands:
        nodes.length === 0
          ? ''
          : airless.length === 0
            ? `${count(nodes.length, 'room')}, ${read === nodes.length ? 'each with its air' : 'some with air taken for granted'}`
            : `${count(nodes.length, 'room')}, no air known yet of ${airless
                .map(({ name }) => name)
                .slice(0, 3)
                .join(', ')}`,
      ways: [{ to: '/air', words: nodes.length === 0 ? 'Add a room' : 'Bring a logger’s file' }],
    },
    {
      title: 'The list you have',
      why: 'Paste or drop the spreadsheet you keep now, in its own words. Or write down one delivery by hand.',
      isDone: containers > 0,
      stands: containers === 0 ? '' : `${count(containers, 'container')} on the book`,
      ways: [
        { to: '/came-in?list', words: 'Bring your list' },
        { to: '/came-in', words: 'Write down a delivery' },
      ],
    },
    {
      title: 'A label on each',
      why: 'Each container has a short code. Print the labels, or write the code on: it is read with a forgiving eye.',
      isDone: false,
      stands: '',
      ways: containers === 0 ? [] : [{ to: '/labels', words: 'Print labels' }],
    },
  ];
}
