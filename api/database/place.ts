// Where a lab's data lies.

export interface DatabaseSettings {
  /** Folder of the SQLite file; made when missing. */
  dataFolder: string;
  /** A `postgres://` address, for labs that outgrow one machine; without it, SQLite. */
  databaseUrl?: string | undefined;
}

/** The SQLite file of a data folder. */
export function sqliteFile(dataFolder: string): string {
  return `${dataFolder}/drumkeep.sqlite`;
}
