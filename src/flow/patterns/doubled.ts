/** The same numbers in an array of twice the length. */
export function doubled<A extends Float64Array | Int32Array>(array: A): A {
  const larger = (
    array instanceof Float64Array ? new Float64Array(2 * array.length) : new Int32Array(2 * array.length)
  ) as A;
  larger.set(array);
  return larger;
}
