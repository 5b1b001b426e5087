// How a command ends: 0 good, 1 bad input with one line of what and where, 2 a check that failed.
import { BadInput } from '../bad-input.ts';
import { InvalidSetting } from '../settings.ts';

/** Sets the exit code to what the command answers; anything unexpected is shown whole. */
export async function endWith(command: Promise<number>): Promise<void> {
  try {
    process.exitCode = await command;
  } catch (error) {
    process.exitCode = 1;
    if (error instanceof BadInput || error instanceof InvalidSetting) console.error(error.message);
    else throw error;
  }
}
