// The GraphQL types of campaigns, offers and orders, by name, so that other rooms can point at them and add fields to them.
import { builder } from '../builder.ts';
import type {
  Campaign,
  Delivery,
  Offer,
  Order,
  PurchasePlan,
  StorageGroup,
} from '../database/generated/sqlite/client.ts';

export const OfferRef = builder.objectRef<Offer>('Offer');
export const StorageGroupRef = builder.objectRef<StorageGroup>('StorageGroup');
export const CampaignRef = builder.objectRef<Campaign>('Campaign');
export const OrderRef = builder.objectRef<Order>('Order');
export const DeliveryRef = builder.objectRef<Delivery>('Delivery');
export const PurchasePlanRef = builder.objectRef<PurchasePlan>('PurchasePlan');
