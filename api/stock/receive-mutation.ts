// The mutation by which stock comes in.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import { BackingEnum, BasisEnum, ClosureEnum, ContainerKindEnum, TargetPolicyEnum } from './enums.ts';
import { fresh } from './fresh.ts';
import { receivedLot, receiveSaid, type Received } from './receive.ts';
import { ContainerRef, LotRef, there } from './refs.ts';

const LotReceived = builder.objectRef<Received>('LotReceived').implement({
  description: 'Stock came in.',
  fields: (t) => ({
    lot: t.field({
      type: LotRef,
      description: 'The lot.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
    containers: t.field({
      type: [ContainerRef],
      description: 'Its new containers, in the order they were given.',
      resolve: async ({ containerIds }, _, { load }) =>
        (await Promise.all(containerIds.map((id) => load.container.load(id)))).map((row) => there(row, 'container')),
    }),
    notes: t.exposeStringList('notes', {
      description: 'What was taken for granted or disagreed, each in one sentence.',
    }),
  }),
});

const CertificateValueInput = builder.inputType('CertificateValueInput', {
  description: 'A value of a certificate of analysis.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'What was determined.' }),
    value: t.float({ required: true, description: 'The value, in its unit.' }),
    unit: t.string({ required: true, description: 'The unit as printed.' }),
  }),
});

const ReceivedContainerInput = builder.inputType('ReceivedContainerInput', {
  description:
    'A container that came in, or several alike. Drums and portions need a vessel or inner sizes and grams; plate boxes need plates.',
  fields: (t) => ({
    kind: t.field({
      type: ContainerKindEnum,
      required: true,
      description: 'Drum, portion or plate box; columns are packed.',
    }),
    room: t.string({ required: true, description: 'Name of the room it stands in.' }),
    count: t.int({ description: 'How many alike; 1 when not given.' }),
    grams: t.float({ description: 'Sorbent in it, g, on `basis`.' }),
    basis: t.field({ type: BasisEnum, description: 'What the grams are counted on; as received when not given.' }),
    plates: t.int({ description: 'Plates in the box.' }),
    startWaterFraction: t.float({
      description: 'Water in it when it came in, kg per kg dry sorbent; the certificate’s when not given.',
    }),
    closure: t.field({ type: ClosureEnum, description: 'How it is closed; sealed when not given.' }),
    usualClosure: t.field({
      type: ClosureEnum,
      description: 'How it is closed once it was opened; well closed when not given.',
    }),
    vessel: t.string({ description: 'Name of a listed vessel; or give inner sizes.' }),
    innerDiameterMm: t.float({ description: 'Inner diameter, mm.' }),
    heightMm: t.float({ description: 'Inner height, mm.' }),
    mouthDiameterMm: t.float({ description: 'Diameter of the mouth, mm; the inner diameter when not given.' }),
    volumeMl: t.float({ description: 'Volume, mL; that of a cylinder when not given.' }),
    tareGrams: t.float({ description: 'Weight of the empty container, g.' }),
    backing: t.field({ type: BackingEnum, description: 'What carries the layer of its plates; glass when not given.' }),
    layerThicknessMm: t.float({ description: 'Thickness of the layer, mm; 0.25 when not given.' }),
    plateWidthMm: t.float({ description: 'Width of a plate, mm; 200 when not given.' }),
    plateHeightMm: t.float({ description: 'Height of a plate, mm; 200 when not given.' }),
  }),
});

addMutation('receiveLot', {
  description:
    'A delivery came in: a lot with all its containers, in one act. A lot number that is there already gets more containers. With the starting water unknown, dry grams are booked at the certificate’s maximum, else 3 %, and marked as assumed.',
  check: receiveSaid,
  success: LotReceived,
  run: (input, context) => fresh(context, receivedLot(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Name of the sorbent.' }),
    supplier: t.string({ description: 'Name of the supplier.' }),
    lotNumber: t.string({ required: true, description: 'The supplier’s lot number, as printed.' }),
    receivedAt: t.field({ type: 'DateTime', description: 'When it came in; now when not given.' }),
    retestOn: t.field({ type: 'DateTime', description: 'Retest date.' }),
    certificateWaterPercent: t.float({ description: 'Water on the certificate, %, on `certificateBasis`.' }),
    certificateMaxWaterPercent: t.float({
      description: 'Highest water the certificate allows, %, on `certificateBasis`.',
    }),
    certificateBasis: t.field({
      type: BasisEnum,
      description: 'What its water is counted on; as received when not given.',
    }),
    certificate: t.field({ type: [CertificateValueInput], description: 'Other values of the certificate.' }),
    targetPolicy: t.field({
      type: TargetPolicyEnum,
      description: 'The lot’s own policy; that of its sorbent when not given.',
    }),
    targetUpperWaterFraction: t.float({ description: 'Upper end of its own band, kg water per kg dry sorbent.' }),
    targetLowerWaterFraction: t.float({ description: 'Lower end of its own band, kg water per kg dry sorbent.' }),
    note: t.string({ description: 'A note beside it.' }),
    containers: t.field({
      type: [ReceivedContainerInput],
      required: true,
      description: 'What came in, at least one container.',
    }),
  }),
});
