// The three things one does with a container that was scanned, by how it stands; and why there is no camera.
import { describe, expect, it } from 'vitest';
import { troubleBefore, troubleOf, troubleWords } from '../../admin/scan/camera.ts';
import { threeActs } from '../../admin/scan/three.ts';

const states = ['GOOD', 'USE_SOON', 'REDRY', 'TOO_DRY', 'UNKNOWN'] as const;
type Of = Parameters<typeof threeActs>[0];
const of = (state: (typeof states)[number] | null, more: Partial<Of> = {}): Of => ({
  kind: 'DRUM',
  isOpen: false,
  finishedAt: null,
  exposure: state && {
    state,
    asOf: '',
    reason: '',
    meanWaterFraction: null,
    scoopWaterFraction: null,
    scoopLow: null,
    scoopHigh: null,
    hoursToLimit: null,
    hoursToLimitClosed: null,
    upperWaterFraction: null,
    lowerWaterFraction: null,
  },
  ...more,
});

describe('three things to do', () => {
  it('are three, all different, in every state of every kind', () => {
    for (const kind of ['DRUM', 'PORTION', 'PLATE_BOX', 'COLUMN'] as const)
      for (const state of [...states, null])
        for (const isOpen of [true, false]) expect(new Set(threeActs(of(state, { kind, isOpen }))).size).toBe(3);
  });
  it('begin with the lid while it stands open: that is what lets the water in', () => {
    for (const state of states) expect(threeActs(of(state, { isOpen: true }))[0]).toBe('closeContainer');
  });
  it('of a shut one begin with what its state asks for', () => {
    expect(threeActs(of('GOOD'))[0]).toBe('takePortion');
    expect(threeActs(of('GOOD', { kind: 'PLATE_BOX' }))[0]).toBe('takePlates');
    expect(threeActs(of('REDRY'))[0]).toBe('dry');
    expect(threeActs(of('UNKNOWN'))[0]).toBe('recordWeighing');
  });
  it('never offer to take from what is to be dried first', () => {
    for (const isOpen of [true, false]) expect(threeActs(of('REDRY', { isOpen }))).not.toContain('takePortion');
  });
  it('never send a column to an oven, nor take from one', () => {
    for (const state of states) {
      const acts = threeActs(of(state, { kind: 'COLUMN' }));
      expect(acts).not.toContain('dry');
      expect(acts).not.toContain('takePortion');
    }
  });
  it('of what is used up by the book ask how much is there', () => {
    expect(threeActs(of('GOOD', { finishedAt: '2026-03-01T00:00:00Z' }))).toEqual(['recordCount']);
  });
});

describe('without a live camera', () => {
  // The names are those of the Media Capture and Streams specification, section 10.2.
  it.each([
    ['NotAllowedError', 'refused'],
    ['NotFoundError', 'none'],
    ['OverconstrainedError', 'none'],
    ['NotReadableError', 'busy'],
  ])('%s is said as %s', (name, trouble) => expect(troubleOf(new DOMException('', name))).toBe(trouble));
  it('a page without HTTPS is told so first', () => {
    expect(troubleBefore(false, false)).toBe('insecure');
    expect(troubleBefore(true, false)).toBe('none');
    expect(troubleBefore(true, true)).toBeNull();
  });
  it('one always learns what to do instead', () => {
    for (const words of Object.values(troubleWords)) expect(words).toMatch(/photo/);
  });
});
