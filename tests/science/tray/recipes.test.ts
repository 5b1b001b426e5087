// Recipes to begin with, their upper temperatures, and drying figures with their sources.
import { describe, expect, it } from 'vitest';
import { dryingFigures, dryingSorbent } from '../../../api/science/tray/properties.ts';
import { gradeOneFromC } from '../../../api/science/grades.ts';
import { recipeFor, recipes, tooHot } from '../../../api/science/tray/recipes.ts';

describe('the recipes to begin with', () => {
  it('never plan hotter than what they dry can bear', () => {
    for (const { name, temperatureC, minutes, upperC } of recipes) {
      expect(temperatureC[1], name).toBeLessThanOrEqual(upperC);
      expect(temperatureC[0], name).toBeLessThanOrEqual(temperatureC[1]);
      expect(minutes[0], name).toBeLessThanOrEqual(minutes[1]);
    }
  });

  it('refuse a temperature above that, naming what suffers and who says so', () => {
    const why = (what: string, temperatureC: number) => tooHot(recipeFor(what)!, temperatureC);
    expect(why('plastic', 91)).toBe(
      'at most 90 °C for plastic-backed plates: above that the plastic backing gives way (from memory; the maker’s sheet comes first)',
    );
    expect(why('amino', 100)).toMatch(/^at most 80 °C for amino: above that the bonded phase/);
    expect(why('silica', 201)).toMatch(/silanols/);
    for (const { dries, upperC } of recipes) {
      expect(why(dries, upperC), dries).toBeNull();
      expect(why(dries, upperC + 0.1), dries).toContain(`at most ${upperC} °C`);
    }
  });

  it('say of each thing once how it is dried', () => {
    const all = recipes.map(({ dries }) => dries);
    expect(new Set(all).size).toBe(all.length);
    expect(recipeFor('kieselguhr')).toBeNull();
  });

  it('never make grade I alumina', () => {
    expect(recipeFor('alumina')!.temperatureC[1]).toBeLessThan(gradeOneFromC);
  });
});

describe('drying figures', () => {
  it('stand for every class whose water is known, each with its source', () => {
    for (const [name, figures] of Object.entries(dryingFigures)) {
      expect(dryingSorbent(name), name).not.toBeNull();
      for (const { source } of Object.values(figures)) expect(source).not.toBe('');
    }
    expect(dryingSorbent('amino')).toBeNull();
  });
});
