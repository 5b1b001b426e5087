// A column was conditioned: of flow and minutes follow its column volumes; what is unlike the practice is kept and marked.
import { z } from 'zod';
import { columnVolumesOf, oddColumnVolumes } from '../science/columns/conditioning.ts';
import { columnVolumeMl } from '../science/columns/volumes.ts';
import { said } from './said.ts';
import { way } from './way.ts';

export const conditionedWay = way(
  'CONDITIONED',
  z.object({
    mobilePhase: said.text,
    columnVolumes: said.columnVolumes.nullish(),
    minutes: said.minutes.nullish(),
    flowMlPerMin: said.ml.nullish(),
  }),
  async ({ work, container }, { mobilePhase, columnVolumes: told, minutes, flowMlPerMin }) => {
    const { innerDiameterMm, bedLengthMm, lotId } = container;
    let columnVolumes = told ?? null;
    if (columnVolumes === null && minutes && flowMlPerMin && innerDiameterMm && bedLengthMm) {
      const { sorbent } = await work.tx.lot.findUniqueOrThrow({ where: { id: lotId }, include: { sorbent: true } });
      const volumeMl = columnVolumeMl(innerDiameterMm, bedLengthMm, sorbent.sorbentClass);
      columnVolumes = columnVolumesOf(flowMlPerMin, minutes, volumeMl);
    }
    const odd = columnVolumes === null ? null : oddColumnVolumes(columnVolumes);
    const detail = {
      ...{ mobilePhase, columnVolumes },
      ...(typeof minutes === 'number' && { minutes }),
      ...(typeof flowMlPerMin === 'number' && { flowMlPerMin }),
    };
    return { detail, notes: odd ? [odd] : [] };
  },
);
