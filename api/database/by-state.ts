// A whole list in its order, as nothing but labels: five thousand of them travel in the bytes of forty lines.
import type { ExposureState } from './generated/sqlite/client.ts';
import { conditionsOf, parameters, type OpenFilter } from './open-filter.ts';
import type { Reader } from './reader.ts';

export interface Placed {
  label: string;
  state: ExposureState;
}

/** Every container of a filter, most urgent first. */
export function placesOf(reader: Reader, filter: OpenFilter): Promise<Placed[]> {
  const { values, given } = parameters();
  return reader.select<Placed>(
    `select c."label", e."state" from "Exposure" e join "Container" c on c."id" = e."containerId"
     where ${conditionsOf(reader.engine, filter, given).join(' and ')} order by e."urgency", e."containerId"`,
    values,
  );
}
