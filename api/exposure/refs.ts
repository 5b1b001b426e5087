// The GraphQL types of estimates, by name.
import { builder } from '../builder.ts';
import type { Exposure } from '../database/generated/sqlite/client.ts';
import type { EstimateProgress } from './progress.ts';
import type { Ground } from './rests-on.ts';
import type { DepthPoint, WaterPoint } from './plot.ts';
import type { Forecast, WhatIf } from './what-if.ts';

export const ExposureRef = builder.objectRef<Exposure>('Exposure');
export const GroundRef = builder.objectRef<Ground>('Ground');
export const WaterPointRef = builder.objectRef<WaterPoint>('WaterPoint');
export const DepthPointRef = builder.objectRef<DepthPoint>('DepthPoint');
export const ProgressRef = builder.objectRef<EstimateProgress>('EstimateProgress');
export const WhatIfRef = builder.objectRef<WhatIf>('WhatIf');
export const ForecastRef = builder.objectRef<Forecast>('Forecast');
