import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { sources, syntaxOf, type SourceFile } from './source-files.ts';

/** What would let the world into the core: clock, chance, environment, DOM, network, timers, console. */
const worldly: ReadonlySet<string> = new Set([
  'process',
  'Date',
  'performance',
  'document',
  'window',
  'navigator',
  'globalThis',
  'console',
  'fetch',
  'require',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'Buffer',
]);

describe('the core is pure', () => {
  it('in every file outside src/shell', () => {
    const files = sources('src', '.ts').filter(({ path }) => !path.startsWith('src/shell/'));
    expect(files.length).toBeGreaterThan(10);
    expect(files.flatMap(worldlyNames)).toEqual([]);
  });

  it('and the rule sees each way out', () => {
    const text = [
      'export const a = Math.random();',
      "export const b = Math['random']();",
      'export const c = new Date();',
      'export const d = process.env;',
      'export const e = (): void => setImmediate(() => document.title);',
    ].join('\n');
    expect(worldlyNames({ path: 'src/x.ts', text })).toEqual([
      'src/x.ts:1 Math.random',
      'src/x.ts:2 Math.random',
      'src/x.ts:3 Date',
      'src/x.ts:4 process',
      'src/x.ts:5 setImmediate',
      'src/x.ts:5 document',
    ]);
  });

  it('but not a field of that name, or a comment', () => {
    const text = '// a Date\nexport const f = (row: { Date: string }): string => row.Date;\n';
    expect(worldlyNames({ path: 'src/x.ts', text })).toEqual([]);
  });
});

function worldlyNames(file: SourceFile): string[] {
  const syntax = syntaxOf(file);
  const found: string[] = [];
  const say = (node: ts.Node, name: string): void => {
    found.push(`${file.path}:${syntax.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${name}`);
  };
  const visit = (node: ts.Node): void => {
    if (isMathRandom(node)) say(node, 'Math.random');
    if (ts.isIdentifier(node) && worldly.has(node.text) && !isMemberName(node)) say(node, node.text);
    ts.forEachChild(node, visit);
  };
  visit(syntax);
  return found;
}

function isMathRandom(node: ts.Node): boolean {
  if (ts.isPropertyAccessExpression(node))
    return node.expression.getText() === 'Math' && node.name.text === 'random';
  return (
    ts.isElementAccessExpression(node) &&
    node.expression.getText() === 'Math' &&
    ts.isStringLiteralLike(node.argumentExpression) &&
    node.argumentExpression.text === 'random'
  );
}

function isMemberName(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    ((ts.isPropertySignature(parent) || ts.isPropertyAssignment(parent)) && parent.name === node)
  );
}
