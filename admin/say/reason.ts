// The reason without what the answer has said already, and without its full stop.

export function reasonBeyond(answer: string, reason: string): string {
  const plain = reason.trim().replace(/\.$/, '');
  const lead = answer.toLowerCase();
  const [first = '', ...rest] = plain.split(/[:;] /);
  const repeats = rest.length > 0 && (lead.startsWith(first.toLowerCase()) || first.toLowerCase().startsWith(lead));
  return repeats ? rest.join('; ') : plain;
}
