// What labels are printed from: containers by their codes, and cautions in a few words.
import { builder } from '../builder.ts';
import { invalid, Refused } from '../errors.ts';
import { labelCautionsOf } from './cautions.ts';
import { labelMeant } from './label.ts';
import { ContainerRef, there } from './refs.ts';

/** A sheet or two at once. */
const most = 200;

builder.interfaceField(ContainerRef, 'labelCautions', (t) =>
  t.field({
    type: ['String'],
    description: 'What to mind with it, in a few words each, for its label; the most urgent first.',
    resolve: async (container, _, { load }) => {
      const lot = there(await load.lot.load(container.lotId), 'lot');
      const { sorbentClass } = there(await load.sorbent.load(lot.sorbentId), 'sorbent');
      return labelCautionsOf(sorbentClass, container);
    },
  }),
);

/** The label that was meant; null for a text that is none. */
function meant(text: string): string | null {
  try {
    return labelMeant(text, 'labels');
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}

builder.queryField('labelled', (t) =>
  t.field({
    type: [ContainerRef],
    description: `The containers with these labels, in their order; those that are not there are left out. At most ${most}.`,
    args: { labels: t.arg.stringList({ required: true, description: 'Labels, read with a forgiving eye.' }) },
    resolve: async (_, { labels }, { database: { read }, lab }) => {
      if (labels.length > most) throw invalid('labels', labels.length, `at most ${most}`);
      const wanted = [...new Set(labels.map(meant))].filter((label) => label !== null);
      const rows = await read.container.findMany({ where: { labId: lab.id, label: { in: wanted }, isVoid: false } });
      const byLabel = new Map(rows.map((row) => [row.label, row]));
      return wanted.flatMap((label) => byLabel.get(label) ?? []);
    },
  }),
);
