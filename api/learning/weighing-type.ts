// The query `weighings`: each weighing that stands, with what was expected of it and whether it counts.
import { builder } from '../builder.ts';
import { invalid } from '../errors.ts';
import { ContainerRef, EventRef, there } from '../stock/schema.ts';
import { labelMeant } from '../stock/service.ts';
import { weighings } from './learned.ts';
import { WeighingRef } from './refs.ts';

const CountsEnum = builder.enumType('WeighingCounts', {
  description: 'What learning made of a weighing.',
  values: {
    USED: { description: 'It was learned from.' },
    CONFIRMED: { description: 'It was learned from because somebody says that it is right, however far off.' },
    LEFT_OUT: { description: 'It lies beyond 4 sigmas of what all others make one expect, and waits for somebody.' },
    REFUSED: { description: 'Somebody says that it is wrong: it counts for nothing.' },
    UNUSABLE: {
      description: 'Nothing can be learned from it; `why` says why. The estimate goes on from it all the same.',
    },
    WAITING: { description: 'It was recorded just now, and will be learned from within seconds.' },
  },
});

const OfEnum = builder.enumType('WeighingOf', {
  description: 'What was weighed.',
  values: {
    SCOOP: { description: 'A sample of the next scoop; water in kg per kg dry sorbent.' },
    WHOLE: { description: 'A fair sample of the whole; water in kg per kg dry sorbent.' },
    GAIN: { description: 'The whole with its vessel, against the time before; kg gained.' },
  },
});

WeighingRef.implement({
  description:
    'A weighing as learning sees it. Numbers are kg water per kg dry sorbent, or, of `GAIN`, kg gained since the time before.',
  fields: (t) => ({
    event: t.field({
      type: EventRef,
      description: 'The event by which it was recorded.',
      resolve: async ({ eventId }, _, { load }) => there(await load.event.load(eventId), 'event'),
    }),
    container: t.field({
      type: ContainerRef,
      description: 'What was weighed.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
    at: t.expose('at', { type: 'DateTime', description: 'When it was weighed.' }),
    counts: t.field({
      type: CountsEnum,
      description: 'Whether it counts.',
      resolve: ({ learned }) => (learned ? (learned.counts as 'USED') : 'WAITING'),
    }),
    of: t.field({
      type: OfEnum,
      nullable: true,
      description: 'What was weighed; null while it waits.',
      resolve: ({ learned }) => (learned ? (learned.of.toUpperCase() as 'SCOOP') : null),
    }),
    found: t.float({ nullable: true, description: 'What was found.', resolve: ({ learned }) => learned?.found }),
    noiseSd: t.float({
      nullable: true,
      description: 'One sigma of the weighing itself, and of what the model leaves out there.',
      resolve: ({ learned }) => learned?.noiseSd,
    }),
    expectedBefore: t.float({
      nullable: true,
      description: 'What was expected before anything was learned.',
      resolve: ({ learned }) => learned?.expectedBefore,
    }),
    sdBefore: t.float({
      nullable: true,
      description: 'One sigma of that, the weighing’s own included.',
      resolve: ({ learned }) => learned?.sdBefore,
    }),
    expectedNow: t.float({
      nullable: true,
      description: 'What is expected there by all that was learned.',
      resolve: ({ learned }) => learned?.expectedNow,
    }),
    sigmas: t.float({
      nullable: true,
      description: 'By how many sigmas it differs from what all other weighings make one expect; positive is wetter.',
      resolve: ({ learned }) => learned?.sigmas,
    }),
    why: t.string({
      nullable: true,
      description: 'Why nothing can be learned from it; null where it can.',
      resolve: ({ learned }) => (learned?.counts === 'UNUSABLE' ? learned.why : null),
    }),
    isRight: t.exposeBoolean('isRight', {
      nullable: true,
      description: 'What somebody said of it with `confirmWeighing`; null when nobody did.',
    }),
  }),
});

const most = 2_000;

builder.queryField('weighings', (t) =>
  t.field({
    type: [WeighingRef],
    description: 'Weighings that stand, newest first.',
    args: {
      label: t.arg.string({ description: 'Only of the container with this label.' }),
      onlyLeftOut: t.arg.boolean({
        description: 'Only those that are left out, or of which somebody says that they are right or wrong.',
      }),
      last: t.arg.int({ description: `How many, the newest; 200 when not given, ${most} at most.` }),
    },
    resolve: async (_, { label, onlyLeftOut, last }, context) => {
      const many = last ?? 200;
      if (many < 1 || many > most) throw invalid('last', many, `from 1 to ${most}`);
      const { read } = context.database;
      const where = label ? { labId_label: { labId: context.lab.id, label: labelMeant(label, 'label') } } : null;
      const container = where && (await read.container.findUnique({ where }));
      if (where && !container) return [];
      return weighings(context, { containerId: container?.id ?? null, onlyLeftOut: onlyLeftOut ?? false, last: many });
    },
  }),
);
