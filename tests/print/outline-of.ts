/** The outline of a PDF, read from its bytes. */
import { expect } from 'vitest';

/** Titles of the outline, as the PDF carries them. */
export function outlineOf(pdf: Uint8Array): string[] {
  const text = Buffer.from(pdf).toString('latin1');
  const from = text.indexOf('/Outlines');
  expect(from).toBeGreaterThan(0);
  return [...text.matchAll(/\/Title\s*(\((?:\\.|[^\\)])*\)|<[0-9A-Fa-f]+>)[^>]*?\/(?:Parent|Dest|Next|Prev)/gs)].map(
    ([, raw = '']) => (raw.startsWith('<') ? fromHex(raw.slice(1, -1)) : raw.slice(1, -1)),
  );
}

function fromHex(hex: string): string {
  const bytes = Buffer.from(hex, 'hex');
  return bytes[0] === 0xfe && bytes[1] === 0xff
    ? bytes.subarray(2).swap16().toString('utf16le')
    : bytes.toString('latin1');
}
