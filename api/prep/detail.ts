// What a step takes and leaves, as it is stored beside it: amounts, heat, cautions by key.
import { z } from 'zod';

const liquid = z.object({ solvent: z.string(), ml: z.number() });
const waste = z.object({ stream: z.enum(['HALOGENATED', 'NON_HALOGENATED']), ml: z.number() });

export const stepDetail = z.object({
  place: z.string(),
  plates: z.number().nullable(),
  dryGrams: z.number().nullable(),
  mixture: z.string().nullable(),
  solvents: z.array(liquid),
  waste: z.array(waste),
  temperatureC: z.number().nullable(),
  minutes: z.number().nullable(),
  isVacuum: z.boolean().nullable(),
  depthMm: z.number().nullable(),
  humidityPercent: z.number().nullable(),
  columnVolumes: z.number().nullable(),
  flowMlPerMin: z.number().nullable(),
  diameterMm: z.number().nullable(),
  bedLengthMm: z.number().nullable(),
  ovenId: z.string().nullable(),
  cautions: z.array(z.string()),
});
export type StepDetail = z.infer<typeof stepDetail>;

export const plainDetail: StepDetail = {
  place: '',
  plates: null,
  dryGrams: null,
  mixture: null,
  solvents: [],
  waste: [],
  temperatureC: null,
  minutes: null,
  isVacuum: null,
  depthMm: null,
  humidityPercent: null,
  columnVolumes: null,
  flowMlPerMin: null,
  diameterMm: null,
  bedLengthMm: null,
  ovenId: null,
  cautions: [],
};

export const detailOf = (stored: unknown): StepDetail => stepDetail.parse(stored);
