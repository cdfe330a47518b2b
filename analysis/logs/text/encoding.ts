/** Which letters the bytes of a file stand for, and a stream of bytes in which every delimiter is one ASCII byte. */

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'latin-1';

export interface SniffedEncoding {
  encoding: Encoding;
  /** bytes of the byte-order mark, to be skipped */
  markBytes: number;
}

/**
 * The encoding of a file from its first bytes: the byte-order mark, else where the zero bytes of UTF-16 stand, else
 * whether the bytes are well-formed UTF-8.
 * @param head first bytes of the file, bytes
 * @returns encoding and length of the mark
 */
export function sniffEncoding(head: Uint8Array): SniffedEncoding {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { encoding: 'utf-8', markBytes: 3 };
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf-16le', markBytes: 2 };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf-16be', markBytes: 2 };
  const wide = sniffWide(head);
  if (wide) return { encoding: wide, markBytes: 0 };
  return { encoding: isUtf8(head) ? 'utf-8' : 'latin-1', markBytes: 0 };
}

/** UTF-16 text of a log is mostly ASCII, so one byte of nearly every pair is zero. A tail of zeros is not that. */
function sniffWide(head: Uint8Array): Encoding | null {
  const length = Math.min(head.length, 4096) & ~1;
  if (length < 8) return null;
  let zeroFirst = 0;
  let zeroSecond = 0;
  for (let i = 0; i < length; i += 2) {
    if (head[i] === 0 && head[i + 1] !== 0) zeroFirst++;
    if (head[i + 1] === 0 && head[i] !== 0) zeroSecond++;
  }
  const pairs = length / 2;
  if (zeroSecond > 0.7 * pairs && zeroFirst < 0.05 * pairs) return 'utf-16le';
  if (zeroFirst > 0.7 * pairs && zeroSecond < 0.05 * pairs) return 'utf-16be';
  return null;
}

function isUtf8(head: Uint8Array): boolean {
  // A letter cut in two at the end of the head is no fault of the file.
  let end = head.length;
  for (let back = 1; back <= 3 && back <= head.length; back++) {
    const byte = head[head.length - back] ?? 0;
    if (byte >= 0xc0) {
      end = head.length - back;
      break;
    }
    if (byte < 0x80) break;
  }
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head.subarray(0, end));
    return true;
  } catch {
    return false;
  }
}

/**
 * A function that turns pieces of a file into pieces whose structure is ASCII: UTF-16 becomes UTF-8, others pass.
 * @param encoding encoding of the file, text
 * @returns function of a piece and whether it is the last; gives the piece in an ASCII-compatible encoding
 */
export function toAsciiCompatible(encoding: Encoding): (piece: Uint8Array, last: boolean) => Uint8Array {
  if (encoding !== 'utf-16le' && encoding !== 'utf-16be') return (piece) => piece;
  const decoder = new TextDecoder(encoding);
  const encoder = new TextEncoder();
  return (piece, last) => encoder.encode(decoder.decode(piece, { stream: !last }));
}

/**
 * A function that gives the text of bytes, after toAsciiCompatible. Bytes that are not UTF-8 after all are taken as
 * Latin-1, as many recorders write one degree sign so and nothing else.
 * @param encoding encoding of the file, text
 * @returns function of bytes giving text
 */
export function textOf(encoding: Encoding): (bytes: Uint8Array) => string {
  const latin = new TextDecoder('windows-1252');
  if (encoding === 'latin-1') return (bytes) => latin.decode(bytes);
  const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  return (bytes) => {
    try {
      return strict.decode(bytes);
    } catch {
      return latin.decode(bytes);
    }
  };
}

const MAGIC: readonly { starts: readonly number[]; is: string }[] = [
  { starts: [0x50, 0x4b, 0x03, 0x04], is: 'a zip archive or a spreadsheet workbook' },
  { starts: [0x50, 0x4b, 0x05, 0x06], is: 'an empty zip archive' },
  { starts: [0x1f, 0x8b], is: 'a gzip archive' },
  { starts: [0x42, 0x5a, 0x68], is: 'a bzip2 archive' },
  { starts: [0xfd, 0x37, 0x7a, 0x58, 0x5a], is: 'an xz archive' },
  { starts: [0x37, 0x7a, 0xbc, 0xaf], is: 'a 7-zip archive' },
  { starts: [0x52, 0x61, 0x72, 0x21], is: 'a rar archive' },
  { starts: [0x89, 0x50, 0x4e, 0x47], is: 'a PNG picture' },
  { starts: [0xff, 0xd8, 0xff], is: 'a JPEG picture' },
  { starts: [0x47, 0x49, 0x46, 0x38], is: 'a GIF picture' },
  { starts: [0x25, 0x50, 0x44, 0x46], is: 'a PDF document' },
  { starts: [0xd0, 0xcf, 0x11, 0xe0], is: 'an old office document' },
  { starts: [0x7f, 0x45, 0x4c, 0x46], is: 'a program' },
  { starts: [0x4d, 0x5a, 0x90], is: 'a program' },
  { starts: [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], is: 'a database' },
];

/**
 * What a file is when it is plainly no text table: an archive, a picture, a web page, bytes without meaning as text.
 * @param head first bytes of the file, bytes
 * @returns what it is, in words, or null when it may be text
 */
export function notText(head: Uint8Array): string | null {
  for (const { starts, is } of MAGIC) {
    if (starts.every((byte, i) => head[i] === byte)) return is;
  }
  const start = new TextDecoder('windows-1252').decode(head.subarray(0, 512)).replaceAll('\0', '');
  const trimmed = start
    .replace(/^(ÿþ|þÿ|ï»¿)/, '')
    .trimStart()
    .toLowerCase();
  if (/^<(!doctype|html|\?xml|head|body|script|svg|kml|gpx|!--)/.test(trimmed)) return 'a web page or an XML document';
  if (/^[[{]\s*["{[]/.test(trimmed)) return 'a JSON document';
  if (trimmed.startsWith('{\\rtf')) return 'a word-processor document';
  if (sniffWide(head)) return null;
  let odd = 0;
  let zeros = 0;
  const length = Math.min(head.length, 65_536);
  for (let i = 0; i < length; i++) {
    const byte = head[i] ?? 0;
    if (byte === 0) zeros++;
    else if (byte < 9 || (byte > 13 && byte < 32)) odd++;
  }
  if (zeros === length) return 'nothing but empty bytes';
  const rest = length - zeros;
  if (odd > 0.02 * rest + 2) return 'bytes that are not text';
  // Zero bytes strewn through it, rather than one block of them, make it a binary file.
  if (zeros > 0.05 * length && zeroRuns(head, length) > 8) return 'bytes that are not text';
  return null;
}

function zeroRuns(head: Uint8Array, length: number): number {
  let runs = 0;
  for (let i = 1; i < length; i++) if (head[i] === 0 && head[i - 1] !== 0) runs++;
  return runs;
}
