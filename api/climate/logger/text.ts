/** Bytes to text: UTF-8 with or without byte order mark, UTF-16 either way round, else Latin-1. */

export type Text = { text: string; encoding: 'UTF-8' | 'UTF-16' | 'Latin-1' };

export function textOf(bytes: Uint8Array): Text {
  const utf16 = utf16Label(bytes);
  if (utf16) return { text: new TextDecoder(utf16).decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return damagedOrLatin1(bytes);
  }
}

function utf16Label(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const looked = Math.min(bytes.length, 2000);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < looked; i++) {
    if (bytes[i] !== 0) continue;
    if (i % 2 === 0) even++;
    else odd++;
  }
  // Digits and separators have a zero high byte: nearly every second byte, always on one side.
  if (odd > looked * 0.35 && even < looked * 0.05) return 'utf-16le';
  if (even > looked * 0.35 && odd < looked * 0.05) return 'utf-16be';
  return null;
}

/** A file torn within a character is still UTF-8 when most of what is beyond ASCII reads as such. */
function damagedOrLatin1(bytes: Uint8Array): Text {
  const text = new TextDecoder('utf-8').decode(bytes);
  const beyond = text.match(/[^\x20-\x7e\s]/g) ?? [];
  const bad = beyond.filter((character) => character === '\ufffd').length;
  const good = beyond.length - bad;
  if (good > bad) return { text, encoding: 'UTF-8' };
  return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Latin-1' };
}
