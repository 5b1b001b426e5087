// Mutations that put right what stands behind the stock: bands, numbers, sorbents, lots, people, suppliers, vessels.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import * as catalogue from './catalogue.ts';
import * as keep from './catalogue-keep.ts';
import * as mend from './catalogue-mend.ts';
import { BasisEnum, ConfidenceEnum, NumberOriginEnum, ReactionEnum, TargetPolicyEnum } from './enums.ts';
import { fresh } from './fresh.ts';
import { PersonAdded, SorbentKept, SupplierAdded, VesselAdded } from './keep-mutations.ts';
import { LotRef, there } from './refs.ts';

const LotKept = builder.objectRef<{ lotId: string; notes?: string[] }>('LotKept').implement({
  description: 'A lot was changed.',
  fields: (t) => ({
    lot: t.field({
      type: LotRef,
      description: 'The lot.',
      resolve: async ({ lotId }, _, { load }) => there(await load.lot.load(lotId), 'lot'),
    }),
    notes: t.stringList({ description: 'What followed from it, in sentences.', resolve: ({ notes }) => notes ?? [] }),
  }),
});

const sorbentText = 'Name of the sorbent.';
type Fields = Parameters<typeof addMutation>[1]['fields'];

/** Ends, value, band and grade, as targets take them. */
export const bandFields = ((t) => ({
  upperWaterFraction: t.float({
    description:
      'Upper end, a fraction; under `DRY` alone (nothing given: the default of its class), under `SET` with a lower end.',
  }),
  lowerWaterFraction: t.float({ description: 'Lower end, a fraction; only under `SET`.' }),
  valueWaterFraction: t.float({ description: 'Under `SET`: the water it is set to, a fraction.' }),
  bandWaterFraction: t.float({
    description:
      'How far either side, a fraction: of the value under `SET`; of each lot’s own water under `AS_RECEIVED`, on dry basis (0.005 when not given).',
  }),
  grade: t.string({ description: 'Under `DRY`, instead of an upper end: an activity grade such as `II`.' }),
  basis: t.field({
    type: BasisEnum,
    description: 'What the ends and the value are counted on; dry when not given, as they are read back.',
  }),
})) satisfies Fields;

addMutation('setSorbentTarget', {
  description: 'Says what a sorbent’s water should be; its estimates are judged anew.',
  check: mend.sorbentTargetSaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, mend.sorbentTargetSet(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: sorbentText }),
    policy: t.field({ type: TargetPolicyEnum, required: true, description: 'Dry, as received, or set to a value.' }),
    ...bandFields(t),
  }),
});

addMutation('setLotTarget', {
  description: 'Gives a lot a target of its own; without a policy its sorbent’s counts again.',
  check: mend.lotTargetSaid,
  success: LotKept,
  run: (input, context) => fresh(context, mend.lotTargetSet(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: sorbentText }),
    lotNumber: t.string({ required: true, description: 'The supplier’s lot number.' }),
    policy: t.field({ type: TargetPolicyEnum, description: 'Its own policy; not given: that of its sorbent.' }),
    ...bandFields(t),
  }),
});

const emptied = 'not given: stays; null: emptied';

addMutation('setSorbent', {
  description:
    'Puts right what a sorbent is. Another class brings its numbers wherever those of the table stand; what was measured here stays.',
  check: mend.setSorbentSaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, mend.sorbentMended(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Its name until now.' }),
    name: t.string({ description: 'Its new name.' }),
    sorbentClass: t.string({ description: 'Its class.' }),
    particleSizeLowUm: t.float({ description: `Smallest particles, µm; ${emptied}.` }),
    particleSizeHighUm: t.float({ description: `Largest particles, µm; ${emptied}.` }),
    meshLow: t.int({ description: `Coarser sieve, mesh number; ${emptied}.` }),
    meshHigh: t.int({ description: `Finer sieve, mesh number; ${emptied}.` }),
    poreSizeNm: t.float({ description: `Pore size, nm; ${emptied}.` }),
    bondedPhase: t.string({ description: `Bonded phase, such as \`C18\`; ${emptied}.` }),
    reaction: t.field({ type: ReactionEnum, description: `Acidic, neutral or basic; ${emptied}.` }),
  }),
});

addMutation('resetSorbentProperty', {
  description:
    'Takes one number of a sorbent back to what the table of its class says; all its estimates are made anew.',
  check: mend.resetPropertySaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, mend.propertyReset(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: sorbentText }),
    name: t.string({ required: true, description: 'Which number; the sorbent’s `properties` list them.' }),
  }),
});

const PropertyInput = builder.inputType('SorbentPropertyInput', {
  description: 'A number of a sorbent, with where it comes from.',
  fields: (t) => ({
    name: t.string({ required: true, description: 'Which number; the sorbent’s `properties` list them.' }),
    value: t.float({ description: 'The number, in the unit that `properties` shows; not given: unknown.' }),
    origin: t.field({ type: NumberOriginEnum, description: 'Where it comes from; measured when not given.' }),
    confidence: t.field({ type: ConfidenceEnum, description: 'How sure it is; confirmed when not given.' }),
    source: t.string({ required: true, description: 'Where it comes from, in words.' }),
  }),
});

addMutation('setSorbentProperties', {
  description: 'Replaces several numbers of a sorbent at once, all or nothing; all its estimates are made anew.',
  check: catalogue.setPropertiesSaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, catalogue.propertiesSet(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: sorbentText }),
    properties: t.field({ type: [PropertyInput], required: true, description: 'The numbers.' }),
  }),
});

addMutation('setLot', {
  description:
    'Puts right what is said of a lot: its number, supplier, retest date, certificate and note. Stock that came in by the certificate then begins with its new water, as a correction on the timeline.',
  check: mend.setLotSaid,
  success: LotKept,
  run: (input, context) => fresh(context, mend.lotMended(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: sorbentText }),
    lotNumber: t.string({ required: true, description: 'Its number until now.' }),
    newLotNumber: t.string({ description: 'Its number as it should be.' }),
    supplier: t.string({ description: `Name of the supplier; ${emptied}.` }),
    retestOn: t.field({ type: 'DateTime', description: `Retest date; ${emptied}.` }),
    certificateWaterPercent: t.float({ description: `Water on the certificate, %; ${emptied}.` }),
    certificateMaxWaterPercent: t.float({ description: `Highest water that the certificate allows, %; ${emptied}.` }),
    certificateBasis: t.field({
      type: BasisEnum,
      description: 'What these are counted on; as received when not given.',
    }),
    note: t.string({ description: `A note beside it; ${emptied}.` }),
  }),
});

addMutation('setPerson', {
  description: 'Gives somebody another role or another short name; what they recorded stays theirs.',
  check: keep.setPersonSaid,
  success: PersonAdded,
  run: (input, context) => fresh(context, keep.personMended(context, input)),
  fields: (t) => ({
    shortName: t.string({ required: true, description: 'The short name until now.' }),
    newShortName: t.string({ description: 'The short name as it should be.' }),
    role: t.string({ description: 'What they do.' }),
  }),
});

addMutation('setSupplier', {
  description: 'Gives a supplier another name.',
  check: keep.setSupplierSaid,
  success: SupplierAdded,
  run: (input, context) => fresh(context, keep.supplierMended(context, input)),
  fields: (t) => ({
    supplier: t.string({ required: true, description: 'Its name until now.' }),
    name: t.string({ required: true, description: 'Its name as it should be.' }),
  }),
});

addMutation('setVessel', {
  description: 'Puts a kind of vessel right. Containers keep the sizes they were made with.',
  check: keep.setVesselSaid,
  success: VesselAdded,
  run: (input, context) => fresh(context, keep.vesselMended(context, input)),
  fields: (t) => ({
    vessel: t.string({ required: true, description: 'Its name until now.' }),
    name: t.string({ description: 'Its name as it should be.' }),
    innerDiameterMm: t.float({ description: 'Inner diameter, mm.' }),
    heightMm: t.float({ description: 'Inner height, mm.' }),
    mouthDiameterMm: t.float({ description: 'Diameter of the mouth, mm.' }),
    volumeMl: t.float({ description: 'Volume, mL.' }),
    source: t.string({ description: 'Where the sizes come from.' }),
  }),
});
