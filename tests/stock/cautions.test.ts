// Cautions on a label: few words, and those that fit what is in the container.
import { describe, expect, it } from 'vitest';
import { labelCautionsOf } from '../../api/stock/cautions.ts';

const loose = { kind: 'DRUM', backing: null, touchedSolventAt: null } as const;

describe('the cautions on a label', () => {
  it('say of loose sorbent that it is a dry powder, first of all', () => {
    for (const sorbentClass of ['silica', 'alumina', 'kieselguhr', 'a class of the lab’s own'])
      expect(labelCautionsOf(sorbentClass, loose)[0]).toBe('dry powder: hood or mask');
  });
  it('say of alumina that it concentrates peroxides', () => {
    expect(labelCautionsOf('alumina', loose)).toContain('concentrates peroxides');
    expect(labelCautionsOf('silica', loose)).not.toContain('concentrates peroxides');
  });
  it('say of plastic-backed plates how hot they may get, and nothing of powder', () => {
    expect(labelCautionsOf('silica', { ...loose, kind: 'PLATE_BOX', backing: 'PLASTIC' })).toEqual([
      'plastic backing: at most 90 °C, flat',
    ]);
    expect(labelCautionsOf('silica', { ...loose, kind: 'PLATE_BOX', backing: 'GLASS' })).toEqual([]);
  });
  it('say first that it touched solvent', () => {
    const touchedSolventAt = new Date('2026-03-02T12:00:00Z');
    for (const kind of ['DRUM', 'PORTION', 'PLATE_BOX', 'COLUMN'] as const)
      expect(labelCautionsOf('silica', { kind, backing: 'GLASS', touchedSolventAt })[0]).toMatch(/^touched solvent/);
  });
  it('are each at most six words', () => {
    for (const sorbentClass of ['silica', 'alumina', 'kieselguhr', 'silver-impregnated silica', 'desiccant gel'])
      for (const words of labelCautionsOf(sorbentClass, { ...loose, touchedSolventAt: new Date() }))
        expect(words.split(' ').length).toBeLessThanOrEqual(6);
  });
});
