import { describe, expect, it } from 'vitest';
import { importFaults } from './import-order.ts';
import { importsOf, sources, type SourceFile } from './source-files.ts';

const planted = (path: string, ...lines: string[]): SourceFile => ({ path, text: lines.join('\n') });

describe('imports point down the flow', () => {
  it('in every file of src', () => {
    const files = sources('src', '.ts');
    expect(files.length).toBeGreaterThan(10);
    expect(files.flatMap(importFaults)).toEqual([]);
  });

  it('with no circle of files', () => {
    expect(circles(sources('src', '.ts'))).toEqual([]);
  });
});

describe('the rule itself catches', () => {
  const cases: [name: string, file: SourceFile][] = [
    ['base above itself', planted('src/base/a.ts', "import { b } from '../trade/b.ts';")],
    ['a later stage', planted('src/flow/plan/a.ts', "import { b } from '../choice/b.ts';")],
    ['a later stage by type', planted('src/flow/plan/a.ts', "import type { B } from '../choice/b.ts';")],
    [
      'a value through the exception',
      planted('src/flow/parts/a.ts', "export { b } from '../stock/defect.ts';"),
    ],
    ['solver code in the check', planted('src/flow/check/a.ts', "import { type A, b } from '../cuts/b.ts';")],
    ['node: in the core', planted('src/flow/cuts/a.ts', "import { readFileSync } from 'node:fs';")],
    ['the shell deeper than the door', planted('src/shell/a.ts', "import { b } from '../flow/cuts/b.ts';")],
    ['the core importing the shell', planted('src/pipeline.ts', "import { b } from './shell/b.ts';")],
    ['a dynamic import', planted('src/flow/cuts/a.ts', "const b = await import('../sheet/b.ts');")],
    ['an import type', planted('src/base/a.ts', "type B = import('../flow/cuts/b.ts').B;")],
    ['an LP outside base/lp', planted('src/flow/choice/a.ts', "import s from 'javascript-lp-solver';")],
    ['an unknown package', planted('src/base/a.ts', "import x from 'anything';")],
    ['an unknown folder', planted('src/utils/a.ts', "import { b } from '../base/b.ts';")],
    ['a built ending', planted('src/base/a.ts', "import { b } from './b.js';")],
  ];
  it.each(cases)('%s', (_name, file) => {
    expect(importFaults(file)).toHaveLength(1);
  });

  it('and lets pass what is allowed', () => {
    const fine = [
      planted('src/flow/parts/a.ts', "import type { Face } from '../stock/defect.ts';"),
      planted('src/flow/check/a.ts', "import type { Layout } from '../cuts/layout.ts';"),
      planted('src/flow/cuts/a.ts', "import { b } from '../choice/b.ts';"),
      planted('src/shell/a.ts', "import { b } from '../index.ts';", "import fs from 'node:fs';"),
      planted('src/decide/buy/a.ts', "import { b } from '../../pipeline.ts';"),
    ];
    expect(fine.flatMap(importFaults)).toEqual([]);
  });

  it('a circle of two files', () => {
    const a = planted('src/base/a.ts', "import { b } from './b.ts';");
    const b = planted('src/base/b.ts', "import { a } from './a.ts';");
    expect(circles([a, b])).toEqual(['src/base/a.ts > src/base/b.ts > src/base/a.ts']);
  });
});

/** Circles of imports that run code, each as its files in order. */
function circles(files: readonly SourceFile[]): string[] {
  const taken = new Map(
    files.map((file) => [
      file.path,
      importsOf(file)
        .filter(({ typeOnly }) => !typeOnly)
        .map(({ to }) => to),
    ]),
  );
  const found: string[] = [];
  const done = new Set<string>();
  const walk = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path);
    if (at >= 0) found.push([...trail.slice(at), path].join(' > '));
    if (at >= 0 || done.has(path)) return;
    for (const next of taken.get(path) ?? []) walk(next, [...trail, path]);
    done.add(path);
  };
  for (const path of taken.keys()) walk(path, []);
  return found;
}
