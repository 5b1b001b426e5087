// Suppliers' barcodes as GraphQL shows them: what one says, what was learned of it, and how it is learned and forgotten.
import { builder } from '../builder.ts';
import type { Barcode } from '../database/generated/sqlite/client.ts';
import { addMutation } from '../mutation.ts';
import { connectionOf, inOrderOfMaking, pageOf, pageQuery } from '../page.ts';
import { barcodeForgotten, barcodeLearned, forgetSaid, learnSaid } from './barcode.ts';
import { BackingEnum, ClosureEnum, ContainerKindEnum } from './enums.ts';
import { fresh } from './fresh.ts';
import { barcodeText, type BarcodeText } from './gs1.ts';
import { SorbentRef, SupplierRef, there, VesselRef } from './refs.ts';
import { totalCount } from './total.ts';

const BarcodeRef = builder.objectRef<Barcode>('Barcode').implement({
  description: 'A supplier’s barcode that was learned: what comes in under it.',
  fields: (t) => ({
    code: t.exposeString('code', {
      description: 'The trade item’s number (GTIN) with 14 digits where it is one, else the text of the code.',
    }),
    sorbent: t.field({
      type: SorbentRef,
      description: 'Which sorbent.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    supplier: t.field({
      type: SupplierRef,
      nullable: true,
      description: 'From whom; null when nobody said.',
      resolve: ({ supplierId }, _, { load }) => (supplierId ? load.supplier.load(supplierId) : null),
    }),
    kind: t.field({ type: ContainerKindEnum, description: 'What comes.', resolve: ({ kind }) => kind }),
    grams: t.exposeFloat('grams', { nullable: true, description: 'In each, g as received; null for plates.' }),
    plates: t.exposeInt('plates', { nullable: true, description: 'Plates in each box; null for sorbent.' }),
    vessel: t.field({
      type: VesselRef,
      nullable: true,
      description: 'The vessel it comes in; null when nobody said.',
      resolve: ({ vesselId }, _, { load }) => (vesselId ? load.vessel.load(vesselId) : null),
    }),
    backing: t.field({
      type: BackingEnum,
      nullable: true,
      description: 'What carries the layer of its plates; null for sorbent.',
      resolve: ({ backing }) => backing,
    }),
    closure: t.field({
      type: ClosureEnum,
      nullable: true,
      description: 'How it comes closed; null when nobody said.',
      resolve: ({ closure }) => closure,
    }),
    learnedAt: t.expose('learnedAt', { type: 'DateTime', description: 'When it was learned.' }),
  }),
});

const BarcodeReadRef = builder.objectRef<BarcodeText>('BarcodeRead').implement({
  description:
    'What a supplier’s barcode says. Element strings are read as the GS1 General Specifications set them, with FNC1 (as ASCII 29) or with brackets.',
  fields: (t) => ({
    code: t.exposeString('code', {
      description: 'What is learned of it: its GTIN with 14 digits where it has one, else its text.',
    }),
    gtin: t.exposeString('gtin', { nullable: true, description: 'Trade item number (01), 14 digits; null without.' }),
    lotNumber: t.exposeString('lotNumber', { nullable: true, description: 'Lot number (10); null without.' }),
    expiresOn: t.exposeString('expiresOn', {
      nullable: true,
      description: 'Expiry (17), a day such as `2027-05-31`; null without.',
    }),
    madeOn: t.exposeString('madeOn', {
      nullable: true,
      description: 'Day of production (11), such as `2026-05-31`; null without.',
    }),
    serialNumber: t.exposeString('serialNumber', {
      nullable: true,
      description: 'Serial number (21); null without.',
    }),
    learned: t.field({
      type: BarcodeRef,
      nullable: true,
      description: 'What was learned of it; null when nobody said yet.',
      resolve: ({ code }, _, { database: { read }, lab }) =>
        read.barcode.findUnique({ where: { labId_code: { labId: lab.id, code } } }),
    }),
  }),
});

const BarcodeLearned = builder.objectRef<{ barcodeId: string }>('BarcodeLearned').implement({
  description: 'A barcode was learned.',
  fields: (t) => ({
    barcode: t.field({
      type: BarcodeRef,
      description: 'The barcode.',
      resolve: async ({ barcodeId }, _, { database: { read } }) =>
        there(await read.barcode.findUnique({ where: { id: barcodeId } }), 'barcode'),
    }),
  }),
});

const BarcodeForgotten = builder.objectRef<{ code: string }>('BarcodeForgotten').implement({
  description: 'A barcode was forgotten.',
  fields: (t) => ({ code: t.exposeString('code', { description: 'Which one.' }) }),
});

builder.queryField('barcode', (t) =>
  t.field({
    type: BarcodeReadRef,
    description: 'What a supplier’s barcode says, and what was learned of it.',
    args: { code: t.arg.string({ required: true, description: 'Its text as the scanner gives it.' }) },
    resolve: (_, { code }, { now }) => barcodeText(code.slice(0, 500), now()),
  }),
);

builder.queryField('barcodes', (t) =>
  t.connection(
    {
      type: BarcodeRef,
      description: 'The barcodes that were learned, in the order they were learned.',
      resolve: async (_, args, { database: { read }, lab }) => {
        const columns = inOrderOfMaking<Barcode>();
        const page = pageOf(args, columns);
        const { where, ...rest } = pageQuery(columns, page);
        const of = { labId: lab.id };
        const rows = await read.barcode.findMany({ where: { AND: [of, where] }, ...rest });
        return connectionOf(columns, page, rows, () => read.barcode.count({ where: of }));
      },
    },
    {
      name: 'BarcodesConnection',
      description: 'A page of barcodes.',
      fields: (f) => ({ totalCount: f.int(totalCount) }),
    },
    { name: 'BarcodesEdge', description: 'A barcode with its place in the list.' },
  ),
);

addMutation('learnBarcode', {
  description: 'Says what comes in under a supplier’s barcode; said again, the last one counts.',
  check: learnSaid,
  success: BarcodeLearned,
  run: (input, context) => fresh(context, barcodeLearned(context, input)),
  fields: (t) => ({
    code: t.string({ required: true, description: 'Its text as the scanner gives it.' }),
    sorbent: t.string({ required: true, description: 'Name of the sorbent.' }),
    supplier: t.string({ description: 'Name of the supplier.' }),
    kind: t.field({ type: ContainerKindEnum, required: true, description: 'Drum, portion or plate box.' }),
    grams: t.float({ description: 'In each, g as received; wanted except for plates.' }),
    plates: t.int({ description: 'Plates in each box; wanted for plates.' }),
    vessel: t.string({ description: 'Name of a listed vessel it comes in.' }),
    backing: t.field({ type: BackingEnum, description: 'What carries the layer of its plates.' }),
    closure: t.field({ type: ClosureEnum, description: 'How it comes closed.' }),
  }),
});

addMutation('forgetBarcode', {
  description: 'Forgets a barcode. What came in under it stays as it is.',
  check: forgetSaid,
  success: BarcodeForgotten,
  run: (input, context) => barcodeForgotten(context, input),
  fields: (t) => ({ code: t.string({ required: true, description: 'Its text, or what was learned of it.' }) }),
});
