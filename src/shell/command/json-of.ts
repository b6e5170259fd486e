/** Parsed JSON; undefined when the text is none (no JSON text means undefined). A byte-order mark is forgiven. */
export function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
