// What coming in tells the API.
import { act } from '../act/told.ts';
import type { Closure } from '../say/words.ts';
import { instant, many, maybe, number, text, word } from '../shape.ts';

export const receiveLotAct = act(
  'receiveLot',
  'LotReceived',
  {
    sorbent: text,
    supplier: maybe(text),
    lotNumber: text,
    receivedAt: maybe(instant),
    retestOn: maybe(instant),
    certificateWaterPercent: maybe(number),
    certificateMaxWaterPercent: maybe(number),
    certificateBasis: maybe(word<'AS_RECEIVED' | 'DRY'>()),
    note: maybe(text),
    containers: many({
      kind: word<'DRUM' | 'PLATE_BOX'>(),
      room: text,
      count: maybe(number),
      grams: maybe(number),
      plates: maybe(number),
      vessel: maybe(text),
      closure: maybe(word<Closure>()),
      startWaterFraction: maybe(number),
      backing: maybe(word<'GLASS' | 'ALUMINIUM' | 'PLASTIC'>()),
      layerThicknessMm: maybe(number),
      plateWidthMm: maybe(number),
      plateHeightMm: maybe(number),
      innerDiameterMm: maybe(number),
      heightMm: maybe(number),
      mouthDiameterMm: maybe(number),
    }),
  },
  { containers: many({ label: text }), notes: many(text) },
);

export const addSupplierAct = act('addSupplier', 'SupplierAdded', { name: text }, { supplier: { name: text } });

export const addCommonVesselsAct = act('addCommonVessels', 'CommonVesselsAdded', {}, { vessels: many({ name: text }) });
