/**
 * An angle for people, without its sign, to a tenth of a degree: `45°`, `22.5°`.
 * @example angleText(-33.69) // '33.7°'
 */
export function angleText(degrees: number): string {
  return `${Math.round(Math.abs(degrees) * 10) / 10}°`;
}
