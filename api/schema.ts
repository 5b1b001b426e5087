// The whole schema: every room registers its part on the builder, here they are called together.
import { builder } from './builder.ts';
import './scalars.ts';
import './stock/schema.ts';
import './climate/schema.ts';
import './exposure/schema.ts';
import './learning/schema.ts';
import './drying/schema.ts';
import './plates/schema.ts';
import './columns/schema.ts';
import './ovens/schema.ts';
import './lists/schema.ts';
import './prep/schema.ts';
import './purchasing/schema.ts';
import './ledger/schema.ts';
import './lots/schema.ts';

export const schema = builder.toSchema();
