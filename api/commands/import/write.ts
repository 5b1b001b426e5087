/** The writing half of the import command: opens the lab's database and hands the file to the climate room. */
import { SingleBar } from 'cli-progress';
import { importFile } from '../../climate/service.ts';
import { openDatabase } from '../../database/database.ts';
import type { Database } from '../../database/database.ts';
import { NewerDatabase } from '../../database/migrate.ts';
import { Refused } from '../../errors.ts';
import { loadersOf } from '../../loaders.ts';
import type { Settings } from '../../settings.ts';
import { BadInput } from '../../bad-input.ts';
import type { Asked } from './options.ts';
import { leftOutLines } from './shown.ts';

export interface ToImport {
  bytes: Uint8Array;
  fileName: string;
  room: string;
  answers: Asked['answers'];
}

type Done = Awaited<ReturnType<typeof importFile>>;

/** Imports the file, all of it or nothing; a server may run on the same database meanwhile. Gives what a person is told. */
export async function imported(settings: Settings, file: ToImport): Promise<string> {
  const bar = new SingleBar({
    format: '{stage} [{bar}] step {value} of {total}',
    stream: process.stderr,
    clearOnComplete: true,
  });
  bar.start(2, 0, { stage: 'Opening the book' });
  try {
    const database = await openedOrRefused(settings);
    try {
      bar.update(1, { stage: `Importing ${file.fileName}` });
      const done = await importedInto(database, settings, file);
      bar.update(2, { stage: 'Done' });
      bar.stop();
      return summaryText(done, file.room);
    } finally {
      await database.close();
    }
  } finally {
    bar.stop();
  }
}

async function openedOrRefused(settings: Settings): Promise<Database> {
  try {
    return await openDatabase(settings);
  } catch (error) {
    if (error instanceof NewerDatabase) throw new BadInput(error.message);
    throw error;
  }
}

async function importedInto(database: Database, settings: Settings, file: ToImport): Promise<Done> {
  // A lab is made by the first start of the server, which also fills the demo; an import makes none.
  const lab = await database.read.lab.findFirst({ orderBy: { createdAt: 'asc' } });
  if (!lab) throw new BadInput(`unknown --room: ${file.room}, there is no lab yet; npm start makes one`);
  const context = { lab, actor: null, database, settings, now: () => new Date(), load: loadersOf(database.read) };
  const { quantity, ...answers } = file.answers;
  try {
    return await importFile(context, { ...file, answers: { ...answers, quantity: quantity && [...quantity] } });
  } catch (error) {
    if (error instanceof Refused) throw new BadInput(byOption(error));
    throw error;
  }
}

/** `missing dates, …` as `missing --dates, …`, with the choices. */
function byOption({ message, path, expected }: Refused): string {
  if (path === '' || path === 'FILE') return message;
  const named = message.replace(new RegExp(`^(\\w+) ${path}`), `$1 --${path}`);
  return named.includes(expected) ? named : `${named} ${expected}`;
}

function summaryText({ imported: { added, repeated, disagreeing }, told }: Done, room: string): string {
  const counts = [
    `${added} readings added to ${room}`,
    `${repeated} were there already`,
    ...(disagreeing > 0 ? [`${disagreeing} disagree with what is there, which stays`] : []),
  ];
  const more = told.leftOutCount - told.leftOut.length;
  return [told.understood, `${counts.join('; ')}.`, ...told.notes, ...leftOutLines(told.leftOut, more)].join('\n');
}
