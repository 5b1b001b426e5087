// What GraphQL knows of the stock: types, queries and mutations, each part in its file.
import './container-type.ts';
import './lineage-type.ts';
import './kind-type.ts';
import './event-type.ts';
import './sorbent-type.ts';
import './lot-type.ts';
import './catalogue-type.ts';
import './lab-type.ts';
import './queries.ts';
import './alike-type.ts';
import './day-type.ts';
import './mutations.ts';
import './receive-mutation.ts';
import './vessels-mutation.ts';
import './keep-mutations.ts';
import './barcode-type.ts';
import './shelf-count-mutation.ts';
import './labelled-type.ts';
import './catalogue-mutations.ts';
import './catalogue-fit-type.ts';

export {
  BackingEnum,
  BasisEnum,
  ConfidenceEnum,
  ContainerKindEnum,
  ClosureEnum,
  FrontEdgeEnum,
  PackingMethodEnum,
  PlateRegimeEnum,
  PrewashDirectionEnum,
  ExposureStateEnum,
  NumberOriginEnum,
  TargetPolicyEnum,
  WaterMethodEnum,
  WeighedPartEnum,
} from './enums.ts';
export { fresh } from './fresh.ts';
export { inOvenFields } from './inputs.ts';
export { RecordedRef } from './mutations.ts';
export { bandFields } from './catalogue-mutations.ts';
export { ContainerRef, EventRef, LabRef, LotRef, SorbentRef, there } from './refs.ts';
export { totalCount } from './total.ts';
export type { Listed } from './list.ts';
