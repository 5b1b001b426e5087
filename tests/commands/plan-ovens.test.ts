// The oven planner's command as a person runs it: a file in, a plan as JSON out, one line on what is wrong.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BadInput } from '../../api/bad-input.ts';
import { planOvensInput } from '../../api/commands/plan-ovens/input.ts';
import { planOptions } from '../../api/commands/plan-ovens/options.ts';
import { problemOf } from '../../api/commands/plan-ovens/problem.ts';
import { broken, type CheckedBatch } from '../science/ovens/checker.ts';
import { weekOf } from '../science/ovens/generator.ts';
import { command } from '../support/command.ts';

const folder = mkdtempSync(join(tmpdir(), 'plan-ovens-'));
afterAll(() => rmSync(folder, { recursive: true }));

const oven = { id: 'vacuum', area: 2, temperatureC: [30, 200], startTemperatureC: 22, heatMinutesPerC: 0.5 };
const job = { id: 'silica', minutes: [60, 960], temperatureC: [120, 160], area: 1, dueAt: 300 };
const input = { timeUnit: 'minutes', ovens: [oven], jobs: [job] };

function plan(value: unknown, ...options: string[]) {
  const file = join(folder, 'ovens.json');
  writeFileSync(file, JSON.stringify(value));
  return command('plan-ovens', [file, ...options]);
}

interface Answer {
  batches: (CheckedBatch & { reason: string })[];
  objective: Record<string, number>;
  lowerBound: Record<string, number | null>;
  gap: Record<string, number | null>;
  provenOptimal: boolean;
  seconds: number;
  stopped: string;
  words: string;
}

describe('the plan-ovens command', () => {
  it('plans, proves, and says why', async () => {
    const { code, stdout, stderr } = await plan(input);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(JSON.parse(stdout)).toEqual({
      batches: [
        {
          oven: 'vacuum',
          jobs: ['silica'],
          start: 49,
          end: 109,
          temperatureC: 120,
          setupMinutes: 49,
          reason: 'Starts as soon as the oven is free, with 49 min to heat up; on time with 191 min to spare.',
        },
      ],
      objective: { weightedLatenessHours: 0, ovenHours: 109 / 60, loads: 1, value: 0 },
      lowerBound: { weightedLatenessHours: 0, ovenHours: 109 / 60, value: 0 },
      gap: { minutes: 0, relative: 0, ovenHours: 0 },
      provenOptimal: true,
      seconds: expect.any(Number),
      stopped: 'proof',
      words: 'on time with the fewest oven hours, proven',
    });
  });

  it('plans a week of many jobs with a bound, in two threads', async () => {
    const week = weekOf({ jobs: 30, ovens: 3, days: 2, load: 0.5, seed: 2 });
    const { code, stdout } = await plan(week, '--seconds', '1', '--seed', '3');
    expect(code).toBe(0);
    const answer = JSON.parse(stdout) as Answer;
    expect(broken(week, answer.batches)).toEqual([]);
    expect(answer.lowerBound['value']).toBeLessThanOrEqual(answer.objective['value'] ?? NaN);
    expect(['budget', 'time']).toContain(answer.stopped);
  });

  it('ends with 1 and one line that names the field, or the job that fits no oven', async () => {
    const { code, stdout, stderr } = await plan({ ...input, jobs: [{ ...job, area: 3 }] });
    const line =
      'invalid jobs[0]: "silica", expected a job that fits into an oven by area, temperature and the ovens it names\n';
    expect({ code, stdout, stderr }).toEqual({ code: 1, stdout: '', stderr: line });
  });
});

describe('what the file says', () => {
  const refused = (value: unknown): string => {
    try {
      problemOf(planOvensInput(value));
    } catch (error) {
      if (error instanceof BadInput) return error.message;
      throw error;
    }
    return '';
  };

  it.each([
    [{ ...input, jobs: [{ ...job, area: -1 }] }, 'invalid jobs[0].area: -1, expected an area above 0'],
    [{ ...input, jobs: [{ ...job, minutes: 0 }] }, 'invalid jobs[0].minutes: 0, expected whole minutes, 1 or more'],
    [
      { ...input, jobs: [{ ...job, minutes: [9, 3] }] },
      'invalid jobs[0].minutes: [9,3], expected [least, most] in whole minutes, the smaller one first',
    ],
    [{ ...input, jobs: [job, job] }, 'invalid jobs[1].id: "silica", expected a name that no other has'],
    [{ ...input, jobs: [{ ...job, ovens: ['air'] }] }, 'invalid jobs[0].ovens[0]: "air", expected the id of an oven'],
    [
      { ...input, jobs: [{ ...job, solventWet: true }] },
      'unknown jobs[0].solventWet: true, expected no such field here',
    ],
    [{ ...input, ovens: [] }, 'invalid ovens: [], expected at least one oven'],
    [{ ...input, timeUnit: 'hours' }, 'unknown timeUnit: "hours", expected minutes: all times are whole minutes'],
    [
      { ...input, ovens: [{ ...oven, open: [[9, 3]] }] },
      'invalid ovens[0].open[0]: [9,3], expected [from, to], from before to',
    ],
    [
      { ...input, ovens: [{ ...oven, open: [[0, 30]] }] },
      'invalid jobs[0]: "silica", expected open hours in which it can be loaded, dried and unloaded',
    ],
    [
      { ...input, fixed: [{ oven: 'vacuum', jobs: ['x'], start: 0, end: 9 }] },
      'invalid fixed[0].jobs[0]: "x", expected the id of a job',
    ],
    [{ ...input, setup: { families: ['a'], minutes: [[0]] } }, 'missing jobs[0].family, expected one of a'],
  ])('%#: is refused with what would be right', (value, line) => {
    expect(refused(value)).toBe(line);
  });

  it('options are held to what they can be', () => {
    expect(planOptions(['a.json'])).toEqual({ words: ['a.json'], objective: null, seconds: null, seed: 1 });
    expect(() => planOptions(['a.json', '--seconds', '-3'])).toThrow(BadInput);
    expect(() => planOptions(['a.json', '--objective', 'beauty'])).toThrow(
      /^unknown --objective: "beauty", expected one of lateness/,
    );
    expect(() => planOptions(['a.json', '--what'])).toThrow(/^unknown argument/);
  });
});
