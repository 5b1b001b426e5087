// The four kinds of container, each with what only it has.
import { builder } from '../builder.ts';
import type { Container, ContainerKind } from '../database/generated/sqlite/client.ts';
import type { Context } from '../context.ts';
import { BackingEnum } from './enums.ts';
import { freePlates } from './hold.ts';
import { ContainerRef, there } from './refs.ts';

const ofKind =
  (kind: ContainerKind) =>
  async (id: string, { load }: Context) => {
    const container = await load.container.load(id);
    return container?.kind === kind ? container : null;
  };

const shared = { interfaces: [ContainerRef], id: { resolve: ({ id }: Container) => id } };

builder.node(builder.objectRef<Container>('Drum'), {
  ...shared,
  name: 'Drum',
  description: 'A drum, bottle or jar as it came from the supplier.',
  loadWithoutCache: ofKind('DRUM'),
});

builder.node(builder.objectRef<Container>('Portion'), {
  ...shared,
  name: 'Portion',
  description: 'Sorbent poured into a vessel of its own; it knows what it was taken from.',
  loadWithoutCache: ofKind('PORTION'),
});

builder.node(builder.objectRef<Container>('PlateBox'), {
  ...shared,
  name: 'PlateBox',
  description: 'A box of plates of one make.',
  loadWithoutCache: ofKind('PLATE_BOX'),
  fields: (t) => ({
    plates: t.int({ description: 'Plates left.', resolve: ({ plates }) => plates ?? 0 }),
    freePlates: t.int({ description: 'Plates left that are not kept for anybody.', resolve: freePlates }),
    backing: t.field({
      type: BackingEnum,
      description: 'What carries the layer.',
      resolve: ({ backing }) => there(backing, 'backing'),
    }),
    layerThicknessMm: t.float({
      description: 'Thickness of the layer, mm.',
      resolve: ({ layerThicknessMm }) => there(layerThicknessMm, 'layer thickness'),
    }),
    plateWidthMm: t.float({
      description: 'Width of a plate, mm.',
      resolve: ({ plateWidthMm }) => there(plateWidthMm, 'plate width'),
    }),
    plateHeightMm: t.float({
      description: 'Height of a plate, mm.',
      resolve: ({ plateHeightMm }) => there(plateHeightMm, 'plate height'),
    }),
  }),
});

builder.node(builder.objectRef<Container>('Column'), {
  ...shared,
  name: 'Column',
  description: 'A packed bed, open at its top or capped. Wetted with mobile phase it takes no part in the room’s air.',
  loadWithoutCache: ofKind('COLUMN'),
  fields: (t) => ({
    bedLengthMm: t.float({
      description: 'Length of the bed, mm.',
      resolve: ({ bedLengthMm }) => there(bedLengthMm, 'bed length'),
    }),
    isWetted: t.boolean({ description: 'Mobile phase stands in it.', resolve: ({ wettedAt }) => wettedAt !== null }),
    wettedAt: t.expose('wettedAt', {
      type: 'DateTime',
      nullable: true,
      description: 'When it was wetted with mobile phase; null while dry.',
    }),
  }),
});
