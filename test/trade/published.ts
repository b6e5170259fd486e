import { readFileSync } from 'node:fs';

/** One published fact: what is given, what is expected, how closely, and who says so. */
export interface PublishedCase {
  readonly id: string;
  readonly topic: string;
  readonly given: Readonly<Record<string, unknown>>;
  readonly expect: Readonly<Record<string, unknown>>;
  readonly tolerance: number;
  readonly source: string;
  readonly status: 'found' | 'from memory';
}

const file = new URL('../../fixtures/published/trade-checks.json', import.meta.url);
const book = JSON.parse(readFileSync(file, 'utf8')) as { readonly checks: readonly PublishedCase[] };

/** Every published case, in the fixture's order. */
export const publishedCases = book.checks;

/** The cases of one topic as rows for `it.each`: a title that names the source, and the case. */
export function casesOf(topic: string): [title: string, published: PublishedCase][] {
  const cases = publishedCases.filter((published) => published.topic === topic);
  if (cases.length === 0) throw new Error(`no published case about ${topic}`);
  return cases.map((published) => {
    const memory = published.status === 'from memory' ? ' (from memory)' : '';
    return [`${published.id}: ${published.source}${memory}`, published];
  });
}

/** A number of a case; anything else is a fault of the fixture. */
export function numberIn(facts: Readonly<Record<string, unknown>>, name: string): number {
  const value = facts[name];
  if (typeof value !== 'number') throw new Error(`${name} is no number`);
  return value;
}

/** A text of a case. */
export function textIn(facts: Readonly<Record<string, unknown>>, name: string): string {
  const value = facts[name];
  if (typeof value !== 'string') throw new Error(`${name} is no text`);
  return value;
}
