/** What bytes are by their first few, so that a picture is called a picture. */

export type Kind = { is: 'text' } | { is: 'workbook' } | { is: 'other'; what: string; advice?: string };

/** First bytes as Latin-1. Sources: the formats' own specifications (PNG 5.2, JFIF, GIF89a, PDF 7.5.2, ZIP 4.3.7, RFC 1952, …). */
const SIGNATURES: readonly (readonly [prefix: string, what: string])[] = [
  ['\x89PNG\r\n', 'a PNG picture'],
  ['\xff\xd8\xff', 'a JPEG picture'],
  ['GIF8', 'a GIF picture'],
  ['BM', 'a BMP picture'],
  ['II*\0', 'a TIFF picture'],
  ['MM\0*', 'a TIFF picture'],
  ['%PDF', 'a PDF document'],
  ['\x1f\x8b', 'a gzip archive'],
  ['7z\xbc\xaf', 'a 7-Zip archive'],
  ['Rar!', 'a RAR archive'],
  ['SQLite format 3', 'an SQLite database'],
  ['\x7fELF', 'a program'],
  ['MZ', 'a program'],
  ['{\\rtf', 'a rich-text document'],
  ['ID3', 'a sound file'],
  ['OggS', 'a sound file'],
];

const OLE = '\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1';

export function kindOf(bytes: Uint8Array): Kind {
  const head = latin1(bytes.subarray(0, 4096));
  if (
    bytes.length === 0 ||
    /^[\s\0\ufeff]*$/.test(latin1(bytes.subarray(0, 65_536)).replace(/^(\xef\xbb\xbf|\xff\xfe|\xfe\xff)/, ''))
  ) {
    return { is: 'other', what: 'empty' };
  }
  if (head.startsWith('PK\x03\x04')) return zipKind(bytes);
  if (head.startsWith(OLE)) {
    return { is: 'other', what: 'an old .xls workbook', advice: 'the same workbook saved as .xlsx, or as CSV' };
  }
  if (head.startsWith('RIFF'))
    return { is: 'other', what: head.slice(8, 12) === 'WEBP' ? 'a WebP picture' : 'a sound or film file' };
  if (head.slice(4, 8) === 'ftyp') return { is: 'other', what: 'a film or photo file' };
  const signature = SIGNATURES.find(([prefix]) => head.startsWith(prefix));
  // Two printable letters are no proof by themselves: "BM" and "MZ" may begin a heading.
  if (signature && (signature[0].length > 2 || !isReadable(head))) return { is: 'other', what: signature[1] };
  return textKind(head);
}

/** A workbook's zip names its parts in clear; so do the other office formats. */
function zipKind(bytes: Uint8Array): Kind {
  const names = latin1(bytes.subarray(0, 65_536)) + latin1(bytes.subarray(Math.max(0, bytes.length - 65_536)));
  if (names.includes('xl/workbook') || names.includes('xl/worksheets')) return { is: 'workbook' };
  const advice = 'the sheet saved as .xlsx or CSV';
  if (names.includes('opendocument.spreadsheet')) return { is: 'other', what: 'an OpenDocument spreadsheet', advice };
  if (names.includes('word/document')) return { is: 'other', what: 'a text document', advice };
  return { is: 'other', what: 'a zip archive', advice: 'the files unpacked, one at a time' };
}

function textKind(head: string): Kind {
  const start = head
    .replace(/^\xef\xbb\xbf/, '')
    .replace(/\0/g, '')
    .replace(/^(\xff\xfe|\xfe\xff)/, '')
    .trimStart()
    .slice(0, 300)
    .toLowerCase();
  if (/^(<!doctype html|<html|<head|<body|<!--[\s\S]*?-->\s*<html|<\?xml[^>]*>\s*(<!doctype html|<html))/.test(start))
    return { is: 'other', what: 'a web page' };
  if (start.startsWith('<?xml') || start.startsWith('<svg'))
    return { is: 'other', what: start.includes('<svg') ? 'an SVG picture' : 'an XML document' };
  if (/^[[{]\s*(["{[\]}]|$)/.test(start)) return { is: 'other', what: 'a JSON document' };
  return isReadable(head) ? { is: 'text' } : { is: 'other', what: 'a binary file of no known kind' };
}

/** UTF-16 is half zero bytes, a torn tail may be all zeros: only other control characters speak against text. */
function isReadable(head: string): boolean {
  const isControl = (character: string): boolean => /\p{Cc}/u.test(character) && !/\s/.test(character);
  const controls = [...head].filter((character) => character < '\x80' && isControl(character));
  const zeros = controls.filter((character) => character === '\0').length;
  const paired = /^(\xff\xfe|\xfe\xff)/.test(head) || /^(\0[^\0]){8}|^([^\0]\0){8}/.test(head);
  return controls.length - zeros <= head.length * 0.02 && (paired || zeros <= head.length * 0.3);
}

function latin1(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
}
