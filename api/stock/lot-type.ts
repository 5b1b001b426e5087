// Lots and their suppliers, as GraphQL shows them.
import { builder } from '../builder.ts';
import { z } from 'zod';
import { TargetPolicyEnum } from './enums.ts';
import { ContainerRef, LotRef, SorbentRef, SupplierRef, there } from './refs.ts';

const certificateValues = z.array(z.object({ name: z.string(), value: z.number(), unit: z.string() }));

const CertificateValueRef = builder.objectRef<z.infer<typeof certificateValues>[number]>('CertificateValue').implement({
  description: 'A value of a certificate of analysis.',
  fields: (t) => ({
    name: t.exposeString('name', { description: 'What was determined.' }),
    value: t.exposeFloat('value', { description: 'The value, in its unit.' }),
    unit: t.exposeString('unit', { description: 'The unit as printed.' }),
  }),
});

builder.node(SupplierRef, {
  name: 'Supplier',
  description: 'Who supplies sorbents or plates.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.supplier.load(id),
  fields: (t) => ({ name: t.exposeString('name', { description: 'Its name, once in the lab.' }) }),
});

builder.node(LotRef, {
  name: 'Lot',
  description: 'A lot as the supplier numbers it, with its certificate of analysis.',
  id: { resolve: ({ id }) => id },
  loadWithoutCache: (id, { load }) => load.lot.load(id),
  fields: (t) => ({
    sorbent: t.field({
      type: SorbentRef,
      description: 'The sorbent it is of.',
      resolve: async ({ sorbentId }, _, { load }) => there(await load.sorbent.load(sorbentId), 'sorbent'),
    }),
    supplier: t.field({
      type: SupplierRef,
      nullable: true,
      description: 'Who supplied it; null when nobody said.',
      resolve: ({ supplierId }, _, { load }) => (supplierId ? load.supplier.load(supplierId) : null),
    }),
    lotNumber: t.exposeString('lotNumber', { description: 'The supplier’s own number, as printed.' }),
    receivedAt: t.expose('receivedAt', { type: 'DateTime', description: 'When the first of it came in.' }),
    retestOn: t.expose('retestOn', {
      type: 'DateTime',
      nullable: true,
      description: 'Retest date; null when none is given.',
    }),
    certificateWaterFraction: t.exposeFloat('certificateWaterFraction', {
      nullable: true,
      description: 'Water on the certificate, kg per kg dry sorbent; null when it says none.',
    }),
    certificateMaxWaterFraction: t.exposeFloat('certificateMaxWaterFraction', {
      nullable: true,
      description: 'Highest water the certificate allows, kg per kg dry sorbent; null when it says none.',
    }),
    certificate: t.field({
      type: [CertificateValueRef],
      description: 'Other values of the certificate.',
      resolve: ({ certificate }) => certificateValues.parse(certificate),
    }),
    targetPolicy: t.field({
      type: TargetPolicyEnum,
      nullable: true,
      description: 'Its own policy; null: that of its sorbent.',
      resolve: ({ targetPolicy }) => targetPolicy,
    }),
    targetUpperWaterFraction: t.exposeFloat('targetUpperWaterFraction', {
      nullable: true,
      description: 'Upper end of its own band, kg water per kg dry sorbent; null: that of its sorbent.',
    }),
    targetLowerWaterFraction: t.exposeFloat('targetLowerWaterFraction', {
      nullable: true,
      description: 'Lower end of its own band, kg water per kg dry sorbent; null: that of its sorbent.',
    }),
    targetBandWaterFraction: t.exposeFloat('targetBandWaterFraction', {
      nullable: true,
      description: 'As received: how far either side of its own water, kg per kg dry sorbent; null: half a percent.',
    }),
    note: t.exposeString('note', { nullable: true, description: 'What somebody noted beside it.' }),
    containers: t.field({
      type: [ContainerRef],
      description: 'All its containers, finished ones too, oldest first.',
      resolve: ({ id }, _, { load }) => load.containersOfLot.load(id),
    }),
    dryGrams: t.float({
      description: 'Dry sorbent of it that is left in all its containers, g.',
      resolve: async ({ id }, _, { load }) =>
        (await load.containersOfLot.load(id)).reduce((sum, { dryGrams }) => sum + dryGrams, 0),
    }),
  }),
});
