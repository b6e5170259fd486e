/**
 * How many boards come home when one asks for a quantity: boards come whole, and are taken as long as each brings the cart
 * nearer to it (at a tie too). What comes home is then the quantity on the average, neither more nor less.
 * @param cart board feet in the cart after each board, ascending
 */
export function boardsTaken(cart: readonly number[], boardFeet: number): number {
  let count = 0;
  while (count < cart.length && leastFor(cart, count + 1) <= boardFeet) count += 1;
  return count;
}

/**
 * The least quantity for which so many boards are taken: halfway from the cart before the last of them to the cart with it.
 * @param count at least 1
 */
export function leastFor(cart: readonly number[], count: number): number {
  return ((cart[count - 2] ?? 0) + cart[count - 1]!) / 2;
}
