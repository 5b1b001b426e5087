// The colours, light and dark: readable by WCAG 2.2, and told apart with the common colour-vision deficiencies.
import { readFileSync } from 'node:fs';
import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  filterGrayscale,
  parse,
  wcagContrast,
  type Color,
} from 'culori';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../admin/tokens.css', import.meta.url), 'utf8');
const pairs = [...css.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)];

function coloursOf(look: 'light' | 'dark'): (name: string) => Color {
  const byName = new Map(pairs.map(([, name, light, dark]) => [name, look === 'light' ? light : dark]));
  return (name) => {
    const colour = parse(byName.get(name) ?? '');
    if (!colour) throw new Error(`--${name} is no colour`);
    return colour;
  };
}

// Machado, Oliveira & Fernandes 2009, as the library implements it, at full severity.
const eyes: [string, (colour: Color) => Color][] = [
  ['as most see them', (colour) => colour],
  ['without red cones', filterDeficiencyProt(1)],
  ['without green cones', filterDeficiencyDeuter(1)],
  ['without blue cones', filterDeficiencyTrit(1)],
];

describe.each(['light', 'dark'] as const)('the %s colours', (look) => {
  const colour = coloursOf(look);
  const contrast = (above: string, below: string) => wcagContrast(colour(above), colour(below));

  it('are all there in both looks', () => {
    expect(pairs.length).toBeGreaterThanOrEqual(12);
  });
  // WCAG 2.2, 1.4.3: 4.5:1 for text.
  it.each(['ink', 'muted', 'accent', 'wet'])('%s is read on every ground', (name) => {
    for (const ground of ['paper', 'raised', 'tinted']) expect(contrast(name, ground)).toBeGreaterThanOrEqual(4.5);
  });
  it('what stands on a filled button is read', () => {
    expect(contrast('on-accent', 'accent')).toBeGreaterThanOrEqual(4.5);
    expect(contrast('paper', 'ink')).toBeGreaterThanOrEqual(4.5);
  });
  // WCAG 2.2, 1.4.11: 3:1 for what one must see to use it.
  it('the edge of a field is seen, and the dots on the bar of the water picture', () => {
    expect(contrast('edge', 'raised')).toBeGreaterThanOrEqual(3);
    expect(contrast('ink', 'range')).toBeGreaterThanOrEqual(3);
  });
  it.each(eyes)('wet, accent and plain ink are told apart %s', (_, seen) => {
    // A just noticeable difference is about 1 in CIEDE2000; marks of 20 px want ten times that.
    const apart = (a: string, b: string) => differenceCiede2000()(seen(colour(a)), seen(colour(b)));
    expect(apart('wet', 'ink')).toBeGreaterThan(10);
    expect(apart('wet', 'accent')).toBeGreaterThan(10);
    expect(apart('accent', 'ink')).toBeGreaterThan(10);
  });
  it('the water picture is read without any colour', () => {
    const grey = filterGrayscale(1);
    expect(wcagContrast(grey(colour('ink')), grey(colour('range')))).toBeGreaterThanOrEqual(3);
  });
});
