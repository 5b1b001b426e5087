// Which of the labels that this machine knows somebody meant, read with a forgiving eye as the API does.

/** Signs that people write or read for one of ours. */
const lookAlikes: Record<string, string> = { O: '0', I: '1', L: '1', Z: '2', S: '5', B: '8', U: 'V' };

const signsOf = (text: string): string =>
  [...text.toUpperCase().replaceAll(/[\s\-–—_.]/g, '')].map((sign) => lookAlikes[sign] ?? sign).join('');

/** Null when none is meant, or more than one: `?` stands for one sign that cannot be read. */
export function keptLabel(code: string, labels: Iterable<string>): string | null {
  const meant = signsOf(code);
  if (meant.length !== 6 || meant.replace('?', '').includes('?')) return null;
  const alike = [...labels].filter((label) => {
    const signs = signsOf(label);
    return signs.length === 6 && [...meant].every((sign, i) => sign === '?' || sign === signs[i]);
  });
  return alike.length === 1 ? (alike[0] ?? null) : null;
}
