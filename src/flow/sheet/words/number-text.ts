/** Money to the cent: `$1,204.50`. */
export function money(amount: number): string {
  const cents = Math.round(Math.abs(amount) * 100);
  const whole = grouped(Math.floor(cents / 100));
  return `${amount < 0 && cents > 0 ? '-' : ''}$${whole}.${String(cents % 100).padStart(2, '0')}`;
}

/**
 * A share as a percentage with one decimal: `71.4 %`. Never says 0.0 or 100.0 of what is not quite that.
 * @param share 0 to 1
 */
export function percent(share: number): string {
  const tenths = Math.round(share * 1000);
  if (tenths === 0 && share > 0) return 'under 0.1 %';
  if (tenths === 1000 && share < 1) return 'over 99.9 %';
  return `${(tenths / 10).toFixed(1)} %`;
}

/** A number with `places` decimals and thousands set apart. */
export function decimal(value: number, places: number): string {
  const [whole = '0', fraction] = Math.abs(value).toFixed(places).split('.');
  const sign = value < 0 && Number(value.toFixed(places)) !== 0 ? '-' : '';
  return `${sign}${whole.replace(/\B(?=(\d{3})+$)/g, ',')}${fraction === undefined ? '' : `.${fraction}`}`;
}

function grouped(whole: number): string {
  return decimal(whole, 0);
}

/**
 * A count with its noun: `1 board`, `3 boards`.
 * @example counted(2, 'copy', 'copies') // '2 copies'
 */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${decimal(count, 0)} ${count === 1 ? one : many}`;
}

/** 1st, 2nd, 3rd, 4th, 11th, 21st. */
export function ordinal(count: number): string {
  const lastTwo = count % 100;
  if (lastTwo >= 11 && lastTwo <= 13) return `${count}th`;
  return `${count}${['th', 'st', 'nd', 'rd'][count % 10] ?? 'th'}`;
}
