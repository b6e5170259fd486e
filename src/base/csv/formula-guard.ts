/**
 * What a spreadsheet would run as a formula starts with one of these (the wide forms in some locales). Cells that start
 * with apostrophes before such a sign are counted in, so that guarding can be undone without loss.
 */
const looksRunnable = /^'*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;
const isGuarded = /^'+[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/;
const plainNumber = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i;

/**
 * Makes a cell harmless: an apostrophe goes before what a spreadsheet might run. Plain numbers such as -22.5 stay.
 * @example guardFormula('=1+1') // "'=1+1"
 */
export function guardFormula(text: string): string {
  return looksRunnable.test(text) && !plainNumber.test(text) ? `'${text}` : text;
}

/**
 * Undoes `guardFormula`, for every text: unguard(guard(x)) = x.
 * @example unguardFormula("'=1+1") // '=1+1'
 */
export function unguardFormula(text: string): string {
  return isGuarded.test(text) ? text.slice(1) : text;
}
