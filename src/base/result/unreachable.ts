/** Closes a switch over a union: a case that the compiler proves impossible. Throws if it happens after all. */
export function unreachable(value: never): never {
  throw new Error(`unreachable case: ${String(value)}`);
}
