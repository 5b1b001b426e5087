// How large the parts of a workbook really are, found by unpacking them under a limit before anybody else does;
// and whether its days count from 1904, which its reader sees only where it is written as a number.
// Layout: PKWARE APPNOTE 6.3, sections 4.3.7 (local header), 4.3.12 (central directory), 4.3.16 (its end).
import { inflateRawSync } from 'node:zlib';

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const DEFLATED = 8;

/** A central directory ends within the last 64 KiB and its own 22 bytes. */
function endOf(bytes: Buffer): number {
  const least = Math.max(0, bytes.length - 65_557);
  for (let at = bytes.length - 22; at >= least; at--) if (bytes.readUInt32LE(at) === END) return at;
  return -1;
}

export interface Unpacked {
  /** Days count from 1904-01-01 (ECMA-376 part 1, 18.2.28). */
  is1904: boolean;
  /** The same, written as the word that XML also allows for it. */
  is1904ByWord: boolean;
}

/** What the workbook says of itself; null where its parts unpack to more than so many bytes, or are damaged. */
export function unpackedWithin(file: Uint8Array, mostBytes: number): Unpacked | null {
  const bytes = Buffer.from(file.buffer, file.byteOffset, file.byteLength);
  try {
    const end = endOf(bytes);
    if (end < 0) return null;
    const found: Unpacked = { is1904: false, is1904ByWord: false };
    let at = bytes.readUInt32LE(end + 16);
    let left = mostBytes;
    for (let entry = bytes.readUInt16LE(end + 10); entry > 0; entry--) {
      if (bytes.readUInt32LE(at) !== ENTRY) return null;
      const method = bytes.readUInt16LE(at + 10);
      const packed = bytes.readUInt32LE(at + 20);
      const local = bytes.readUInt32LE(at + 42);
      const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
      const part = bytes.subarray(start, start + packed);
      // zlib itself stops at the limit, whatever size the directory claims.
      const whole = method === DEFLATED ? inflateRawSync(part, { maxOutputLength: Math.max(1, left) }) : part;
      left -= whole.length;
      if (left < 0) return null;
      const nameEnd = at + 46 + bytes.readUInt16LE(at + 28);
      if (bytes.toString('latin1', at + 46, nameEnd) === 'xl/workbook.xml') {
        const flag = /date1904\s*=\s*["'](1|true)["']/.exec(whole.toString('latin1'))?.[1];
        Object.assign(found, { is1904: flag !== undefined, is1904ByWord: flag === 'true' });
      }
      at = nameEnd + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
    }
    return found;
  } catch {
    return null;
  }
}
