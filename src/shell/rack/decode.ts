/** A journal's bytes as text, or why they are none. */
export type Decoded =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: 'UTF-16' };

/**
 * Decodes a journal. Ours is UTF-8; an older spreadsheet may have re-saved it in the one-byte code of western
 * Windows, and lines appended since are UTF-8 again: so where the whole is not UTF-8, each line is taken as what it is.
 */
export function decodeJournal(bytes: Buffer): Decoded {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { ok: false, why: 'UTF-16' };
  const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  const whole = tryDecode(strict, bytes);
  if (whole !== null) return { ok: true, text: whole };
  const western = new TextDecoder('windows-1252');
  const lines: string[] = [];
  for (let start = 0; start <= bytes.length;) {
    const found = bytes.indexOf(0x0a, start);
    const end = found < 0 ? bytes.length : found;
    const line = bytes.subarray(start, end);
    lines.push(tryDecode(strict, line) ?? western.decode(line));
    start = end + 1;
  }
  return { ok: true, text: lines.join('\n') };
}

function tryDecode(decoder: InstanceType<typeof TextDecoder>, bytes: Uint8Array): string | null {
  try {
    return decoder.decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}

/** Where the line after so many whole lines begins, in bytes; a line end byte stands for nothing else in UTF-8. */
export function bytesOfLines(bytes: Buffer, lines: number, lineEnd: '\n' | '\r\n' | '\r'): number {
  const mark = lineEnd === '\r' ? 0x0d : 0x0a;
  let at = 0;
  for (let line = 0; line < lines; line += 1) {
    const found = bytes.indexOf(mark, at);
    if (found < 0) return bytes.length;
    at = found + 1;
  }
  return at;
}
