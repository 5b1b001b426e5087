// Where a container came from and what became of it: sources, what else was taken from its source, what was taken from it, what
// was emptied into it or out of it. One statement, whatever the depth.
import type { Reader } from './reader.ts';

export const relations = ['ANCESTOR', 'SIBLING', 'COMBINED_FROM', 'DESCENDANT', 'EMPTIED_INTO'] as const;

export interface Kin {
  id: string;
  relation: (typeof relations)[number];
  /** Steps from the container: below 0 towards the lot, above 0 away from it. */
  level: number;
}

/** Steps either way; a drum's portions are poured on a few times, not a hundred. */
const mostLevels = 20;
const mostKin = 200;

/** Kin of a container, the farthest source first; at most 200, `more` when there are more. */
export async function kinOf({ select }: Reader, containerId: string): Promise<{ kin: Kin[]; more: boolean }> {
  const rows = await select<Kin>(
    `with recursive up("id", "takenFromId", "level") as (
       select c."id", c."takenFromId", 0 from "Container" c where c."id" = $1
       union all
       select p."id", p."takenFromId", up."level" - 1 from "Container" p join up on p."id" = up."takenFromId"
       where up."level" > -${mostLevels}
     ), down("id", "level") as (
       select c."id", 0 from "Container" c where c."id" = $1
       union all
       select c."id", down."level" + 1 from "Container" c join down on c."takenFromId" = down."id"
       where c."isVoid" = false and down."level" < ${mostLevels}
     )
     select "id", "level", "relation" from (
       select "id", "level", 'ANCESTOR' as "relation", 0 as "rank" from up where "level" < 0
       union all
       select c."id", 0, 'SIBLING', 2 from "Container" c join up on up."level" = 0 and c."takenFromId" = up."takenFromId"
       where c."isVoid" = false and c."id" <> up."id"
       union all
       select e."containerId", -1, 'COMBINED_FROM', 1 from "Event" e
       where e."otherContainerId" = $1 and e."type" = 'COMBINED' and e."stands" = true
       union all
       select e."otherContainerId", 1, 'EMPTIED_INTO', 3 from "Event" e
       where e."containerId" = $1 and e."type" = 'COMBINED' and e."stands" = true and e."otherContainerId" is not null
       union all
       select "id", "level", 'DESCENDANT', 4 from down where "level" > 0
     ) kin order by "rank", "level", "id" limit ${mostKin + 1}`,
    [containerId],
  );
  return { kin: rows.slice(0, mostKin), more: rows.length > mostKin };
}
