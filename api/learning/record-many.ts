// Many weighings at once, from a script or a pasted table: all of them or none, and everything that is wrong by its line.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { checked, Refused, type Problem } from '../errors.ts';
import { containerOf, happened, said, weighingSaid } from '../stock/service.ts';
import { write, type Work } from '../work.ts';

const most = 2_000;

export const recordManySaid = z.object({
  weighings: z.array(z.unknown()).min(1, 'one weighing or more').max(most, `at most ${most} weighings at once`),
  clientKey: said.clientKey,
});

const lineSaid = weighingSaid.extend({ label: said.label, at: said.at, note: said.text });

/** A line on the balance with its vessel needs no method said. */
const withMethod = (line: unknown): unknown => {
  const { method, grossGrams } = line as { method?: unknown; grossGrams?: unknown };
  return method === undefined && typeof grossGrams === 'number' ? { ...(line as object), method: 'GROSS' } : line;
};

async function recordedLine(work: Work, line: unknown): Promise<string> {
  const { label, at, note, ...told } = checked(lineSaid, withMethod(line));
  const container = await containerOf(work, label);
  const what = { type: 'WEIGHED', container, at: at ?? work.now, note, said: told } as const;
  return (await happened(work, what)).eventId;
}

/** The same refusal with the line in its path. */
function problemOf(error: unknown, index: number): { path: string; message: string; problem: Problem } {
  if (!(error instanceof Refused)) throw error;
  const under = `input.weighings.${index}`;
  const path = error.path.replace(/^input\b/, under);
  const message = error.message.replace(/\binput\b/, under);
  const column = error.path.replace(/^input\.?/, '') || null;
  return { path, message, problem: { line: index + 1, column, value: '', message, expected: error.expected } };
}

export async function recordedMany(
  context: Context,
  input: z.output<typeof recordManySaid>,
): Promise<{ eventIds: string[] }> {
  return write(context, 'recordWeighings', input, async (work) => {
    const eventIds: string[] = [];
    const wrong: ReturnType<typeof problemOf>[] = [];
    for (const [index, line] of input.weighings.entries()) {
      try {
        eventIds.push(await recordedLine(work, line));
      } catch (error) {
        wrong.push(problemOf(error, index));
      }
    }
    const [first] = wrong;
    if (first) {
      const { path, message, problem } = first;
      throw new Refused(
        message,
        path,
        problem.expected,
        wrong.map((one) => one.problem),
      );
    }
    return { eventIds };
  });
}
