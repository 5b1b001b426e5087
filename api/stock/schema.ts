// What GraphQL knows of the stock: types, queries and mutations, each part in its file.
import './container-type.ts';
import './kind-type.ts';
import './event-type.ts';
import './sorbent-type.ts';
import './lot-type.ts';
import './catalogue-type.ts';
import './lab-type.ts';
import './queries.ts';
import './mutations.ts';
import './receive-mutation.ts';
import './keep-mutations.ts';
import './catalogue-mutations.ts';
import './catalogue-fit-type.ts';
import './barcode-type.ts';
import './shelf-count-mutation.ts';
import './labelled-type.ts';

export {
  ConfidenceEnum,
  ContainerKindEnum,
  ClosureEnum,
  ExposureStateEnum,
  NumberOriginEnum,
  TargetPolicyEnum,
} from './enums.ts';
export { fresh } from './fresh.ts';
export { bandFields } from './catalogue-mutations.ts';
export { ContainerRef, EventRef, LabRef, LotRef, SorbentRef, there } from './refs.ts';
export { totalCount } from './total.ts';
export type { Listed } from './list.ts';
