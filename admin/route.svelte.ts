// Where the person is: the address is the only place that knows, so that every view can be bookmarked and sent.

let href = $state(location.href);
const url = $derived(new URL(href));

export const here = {
  get path(): string {
    return url.pathname;
  },
  get search(): URLSearchParams {
    return url.searchParams;
  },
};

const beforeLeaving = new Map<string, number>();

/** Goes to an address of this page; `replace` leaves no step to come back to. */
export function go(to: string, replace = false): void {
  const next = new URL(to, location.href);
  if (next.href === location.href) return;
  beforeLeaving.set(location.href, scrollY);
  history[replace ? 'replaceState' : 'pushState'](null, '', next);
  const samePage = next.pathname === url.pathname;
  href = next.href;
  if (!samePage) scrollTo(0, 0);
}

/** The address with one search parameter set, or dropped when null. */
export function withSearch(name: string, value: string | null): string {
  const next = new URL(href);
  if (value === null || value === '') next.searchParams.delete(name);
  else next.searchParams.set(name, value);
  return `${next.pathname}${next.search}`;
}

addEventListener('popstate', () => {
  href = location.href;
  const top = beforeLeaving.get(href);
  if (top !== undefined) requestAnimationFrame(() => scrollTo(0, top));
});

/** Plain clicks on links of our own stay on the page; everything else is the browser's. */
addEventListener('click', (event) => {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)
    return;
  const link = event.target instanceof Element ? event.target.closest('a') : null;
  if (!link || link.origin !== location.origin || link.target || link.hasAttribute('download') || link.hash) return;
  event.preventDefault();
  go(link.href);
});

/** The page of a container. */
export const containerPath = (label: string): string => `/c/${encodeURIComponent(label)}`;
