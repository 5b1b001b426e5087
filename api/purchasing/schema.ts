// What GraphQL knows of campaigns, offers and orders: types, queries, and the mutations of their files.
import './money-type.ts';
import './offer-type.ts';
import './terms-type.ts';
import './item-type.ts';
import './campaign-type.ts';
import './coverage-type.ts';
import './order-type.ts';
import './plan-type.ts';
import './moved-type.ts';
import './due-type.ts';
import './plan-acts-type.ts';
