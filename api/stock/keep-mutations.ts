// Mutations of what stands behind the stock: sorbents with their numbers, suppliers, people, vessels, holds.
import { builder } from '../builder.ts';
import { addMutation } from '../mutation.ts';
import * as catalogue from './catalogue.ts';
import { ConfidenceEnum, NumberOriginEnum, ReactionEnum, TargetPolicyEnum } from './enums.ts';
import { fresh } from './fresh.ts';
import { heldStock, holdSaid, releasedHold, releaseSaid } from './hold.ts';
import { ContainerRef, HoldRef, PersonRef, SorbentRef, SupplierRef, there, VesselRef } from './refs.ts';

export const SorbentKept = builder.objectRef<{ sorbentId: string }>('SorbentKept').implement({
  description: 'A sorbent was added or changed.',
  fields: (t) => ({
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
  }),
});

export const SupplierAdded = builder.objectRef<{ supplierId: string }>('SupplierAdded').implement({
  description: 'A supplier was added or changed.',
  fields: (t) => ({
    supplier: t.field({
      type: SupplierRef,
      description: 'The supplier.',
      resolve: async ({ supplierId }, _, { load }) => there(await load.supplier.load(supplierId), 'supplier'),
    }),
  }),
});

export const PersonAdded = builder.objectRef<{ personId: string }>('PersonAdded').implement({
  description: 'A person was added or changed.',
  fields: (t) => ({
    person: t.field({
      type: PersonRef,
      description: 'The person.',
      resolve: async ({ personId }, _, { load }) => there(await load.person.load(personId), 'person'),
    }),
  }),
});

export const VesselAdded = builder.objectRef<{ vesselId: string }>('VesselAdded').implement({
  description: 'A kind of vessel was added or changed.',
  fields: (t) => ({
    vessel: t.field({
      type: VesselRef,
      description: 'The vessel.',
      resolve: async ({ vesselId }, _, { load }) => there(await load.vessel.load(vesselId), 'vessel'),
    }),
  }),
});

const Held = builder.objectRef<{ holdId: string; containerId: string }>('Held').implement({
  description: 'Something is kept for somebody, or was let go.',
  fields: (t) => ({
    hold: t.field({
      type: HoldRef,
      description: 'What is kept.',
      resolve: async ({ holdId }, _, { load }) => there(await load.hold.load(holdId), 'hold'),
    }),
    container: t.field({
      type: ContainerRef,
      description: 'The container it is kept in.',
      resolve: async ({ containerId }, _, { load }) => there(await load.container.load(containerId), 'container'),
    }),
  }),
});

addMutation('addSorbent', {
  description:
    'Adds a sorbent. Its numbers are those of its class, each with where it comes from; for a class of the lab’s own they are unknown until set.',
  check: catalogue.addSorbentSaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, catalogue.sorbentAdded(context, input)),
  fields: (t) => ({
    name: t.string({ required: true, description: 'Its name, once in the lab.' }),
    sorbentClass: t.string({
      required: true,
      description: `One of ${catalogue.knownClasses.join(', ')}, or a class of the lab’s own.`,
    }),
    particleSizeLowUm: t.float({ description: 'Smallest particles, µm.' }),
    particleSizeHighUm: t.float({ description: 'Largest particles, µm.' }),
    meshLow: t.int({ description: 'Coarser sieve, mesh number.' }),
    meshHigh: t.int({ description: 'Finer sieve, mesh number.' }),
    poreSizeNm: t.float({ description: 'Pore size, nm.' }),
    bondedPhase: t.string({ description: 'Bonded phase, such as `C18`.' }),
    reaction: t.field({ type: ReactionEnum, description: 'Acidic, neutral or basic.' }),
    targetPolicy: t.field({ type: TargetPolicyEnum, description: 'What its water should be; dry when not given.' }),
    targetUpperWaterFraction: t.float({
      description: 'Upper end of the band, kg water per kg dry sorbent; the default of its class when not given.',
    }),
    targetLowerWaterFraction: t.float({ description: 'Lower end of the band, kg water per kg dry sorbent.' }),
  }),
});

addMutation('setSorbentProperty', {
  description: 'Replaces one number of a sorbent by a better one; all its estimates are made anew.',
  check: catalogue.setPropertySaid,
  success: SorbentKept,
  run: (input, context) => fresh(context, catalogue.propertySet(context, input)),
  fields: (t) => ({
    sorbent: t.string({ required: true, description: 'Name of the sorbent.' }),
    name: t.string({
      required: true,
      description: 'Which number, such as `bulkDensityKgPerM3`; the sorbent’s `properties` list them.',
    }),
    value: t.float({ description: 'The number, in the unit that `properties` shows; not given: unknown.' }),
    origin: t.field({ type: NumberOriginEnum, description: 'Where it comes from; measured when not given.' }),
    confidence: t.field({ type: ConfidenceEnum, description: 'How sure it is; confirmed when not given.' }),
    source: t.string({ required: true, description: 'Where it comes from, in words.' }),
  }),
});

addMutation('addSupplier', {
  description: 'Adds a supplier.',
  check: catalogue.addSupplierSaid,
  success: SupplierAdded,
  run: (input, context) => fresh(context, catalogue.supplierAdded(context, input)),
  fields: (t) => ({ name: t.string({ required: true, description: 'Its name, once in the lab.' }) }),
});

addMutation('addPerson', {
  description: 'Adds somebody of the lab, by role.',
  check: catalogue.addPersonSaid,
  success: PersonAdded,
  run: (input, context) => fresh(context, catalogue.personAdded(context, input)),
  fields: (t) => ({
    role: t.string({ required: true, description: 'What they do, such as `bench lead`.' }),
    shortName: t.string({ required: true, description: 'Short name, once in the lab.' }),
  }),
});

addMutation('addVessel', {
  description: 'Adds a kind of vessel with its inner sizes.',
  check: catalogue.addVesselSaid,
  success: VesselAdded,
  run: (input, context) => fresh(context, catalogue.vesselAdded(context, input)),
  fields: (t) => ({
    name: t.string({ required: true, description: 'Its name, once in the lab.' }),
    innerDiameterMm: t.float({ required: true, description: 'Inner diameter, mm.' }),
    heightMm: t.float({ required: true, description: 'Inner height, mm.' }),
    mouthDiameterMm: t.float({ description: 'Diameter of the mouth, mm; the inner diameter when not given.' }),
    volumeMl: t.float({ description: 'Volume, mL; that of a cylinder when not given.' }),
    source: t.string({ description: 'Where the sizes come from.' }),
  }),
});

addMutation('holdStock', {
  description:
    'Keeps grams or plates of a container for somebody. More than is free is refused: nothing is promised twice.',
  check: holdSaid,
  success: Held,
  run: (input, context) => fresh(context, heldStock(context, input)),
  fields: (t) => ({
    label: t.string({ required: true, description: 'Label of the container.' }),
    dryGrams: t.float({ description: 'Dry sorbent to keep, g.' }),
    plates: t.int({ description: 'Plates to keep, of a plate box.' }),
    forWhat: t.string({ required: true, description: 'For what, or for whom.' }),
    until: t.field({ type: 'DateTime', description: 'Until when; until it is let go when not given.' }),
  }),
});

addMutation('releaseHold', {
  description: 'Lets go of what was kept.',
  check: releaseSaid,
  success: Held,
  run: (input, context) => fresh(context, releasedHold(context, input)),
  fields: (t) => ({ hold: t.id({ required: true, description: 'Which hold.' }) }),
});
