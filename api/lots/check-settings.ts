// What the lab sets for its checks: how much two lots may differ and still count as the same. All of it has a default.
import { z } from 'zod';
import type { Context } from '../context.ts';
import { missing } from '../errors.ts';
import { partAfter, settingsWritten } from '../lab-settings.ts';
import { usualMargin, usualReadingStep } from '../science/lots/verdict.ts';
import type { checkSettingsSaid, Retention } from './said.ts';

export interface CheckSettings {
  marginRf: number;
  /** k or column volumes. */
  marginColumn: number;
  readingStepRf: number;
  readingStepColumn: number;
}

/** Invented defaults, shown as such. */
export const usualChecks: CheckSettings = {
  marginRf: usualMargin,
  marginColumn: 0.3,
  readingStepRf: usualReadingStep,
  readingStepColumn: 0.05,
};

const stored = z.object({ checks: z.record(z.string(), z.number()) });

/** What counts now, and which of it the lab has set itself. */
export function checkSettingsOf(settings: unknown): CheckSettings & { own: string[] } {
  const set = stored.safeParse(settings).data?.checks ?? {};
  const given = Object.entries(set).filter(([key]) => key in usualChecks);
  return { ...usualChecks, ...Object.fromEntries(given), own: given.map(([key]) => key) };
}

export interface Margin {
  readonly margin: number;
  readonly readingStep: number;
  /** Nobody has set it: the invented default. */
  readonly isDefault: boolean;
}

/** The margin of a check: its own, the lab's, or the default. */
export function marginOf(settings: unknown, retention: Retention, own: number | null): Margin {
  const lab = checkSettingsOf(settings);
  const isRf = retention === 'RF';
  return {
    margin: own ?? (isRf ? lab.marginRf : lab.marginColumn),
    readingStep: isRf ? lab.readingStepRf : lab.readingStepColumn,
    isDefault: own === null && !lab.own.includes(isRf ? 'marginRf' : 'marginColumn'),
  };
}

/** Writes the lab's choices; what is null goes back to its default. */
export function checkSettingsSet(
  context: Context,
  input: z.output<typeof checkSettingsSaid>,
): Promise<{ labId: string }> {
  return settingsWritten(context, 'setCheckSettings', input, (before) => {
    const { clientKey: _, ...told } = input;
    if (Object.keys(told).length === 0) throw missing('input', 'what the lab sets');
    return partAfter(before, 'checks', told);
  });
}
