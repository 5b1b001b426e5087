// The page's colours for what is drawn on a canvas, which knows no custom properties.

const names = ['paper', 'ink', 'muted', 'rule', 'line', 'tinted', 'accent', 'wet', 'range'] as const;
export type Colours = Record<(typeof names)[number], string>;

/** The colours as they are now, light or dark. */
export function coloursNow(within: HTMLElement): Colours {
  const probe = document.createElement('span');
  within.append(probe);
  const colours = Object.fromEntries(
    names.map((name) => {
      probe.style.color = `var(--${name})`;
      return [name, getComputedStyle(probe).color];
    }),
  ) as Colours;
  probe.remove();
  return colours;
}
