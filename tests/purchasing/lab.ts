// A small lab that buys: its supplier's offers, campaigns and orders as a script tells them.
import type { World } from '../support/world.ts';

export const silica = 'Silica 40–63 µm';

export interface SeenCampaign {
  id: string;
  name: string;
  total: number;
  lot: { lotNumber: string } | null;
  kept: { amount: number; wanted: number; lastsUntil: string | null; coversAll: boolean } | null;
}

export const campaignFields = 'id name total lot { lotNumber } kept { amount wanted lastsUntil coversAll }';

export interface SeenOrder {
  id: string;
  number: number;
  stateWords: string;
  packs: number;
  packsToCome: number;
  price: { amount: string; minor: string; text: string };
  total: { amount: string };
  expectedOn: string | null;
  deliveries: {
    lotNumber: string;
    packs: number;
    damagedPacks: number;
    isOtherLot: boolean;
    containers: { label: string; dryGrams: number }[];
  }[];
}

export const orderFields = `id number stateWords packs packsToCome price { amount minor text } total { amount } expectedOn
  deliveries { lotNumber packs damagedPacks isOtherLot containers { label dryGrams } }`;

type Input = Record<string, unknown>;

let campaigns = 0;

export const buyingOf = (world: World) => ({
  /** A campaign of silica with these uses. */
  campaign: async (input: Input = {}): Promise<SeenCampaign> => {
    const said = {
      name: `campaign ${(campaigns += 1)}`,
      sorbent: silica,
      uses: [
        { day: '2026-03-06', amount: 200 },
        { day: '2026-03-13', amount: 300 },
      ],
      ...input,
    };
    return (await world.tell<{ campaign: SeenCampaign }>('addCampaign', said, `campaign { ${campaignFields} }`))
      .campaign;
  },
  keep: async (campaign: SeenCampaign, lotNumber: string | null, more: Input = {}) =>
    world.tell<{ campaign: SeenCampaign; notes: string[] }>(
      'keepLot',
      { campaign: campaign.id, lotNumber, ...more },
      `campaign { ${campaignFields} } notes`,
    ),
  /** An offer of silica: packs of 1 kg. */
  offer: async (input: Input = {}): Promise<string> => {
    const said = {
      supplier: 'Marlpit Chemicals',
      sorbent: silica,
      packGrams: 1000,
      prices: [
        { from: 1, price: '84.50' },
        { from: 3, price: '80.00' },
      ],
      leadUsualWeeks: 2,
      ...input,
    };
    return (await world.tell<{ offer: { id: string } }>('addOffer', said, 'offer { id }')).offer.id;
  },
  order: async (mutation: string, input: Input): Promise<{ order: SeenOrder; notes: string[] }> =>
    world.tell(mutation, input, `order { ${orderFields} } notes`),
});
