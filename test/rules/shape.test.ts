import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { sources, syntaxOf, type SourceFile } from './source-files.ts';

const longestFile = 300;
const longestFunction = 60;
/** Numeric kernels may be longer, if they read in paragraphs. */
const longestKernel = 120;
const kernels = /^src\/(?:base\/lp|flow\/(?:patterns|choice|cuts)|trade\/grades)\//;
const drawers = /(?:^|\/)(?:utils?|helpers?|common|misc|shared|manager)(?:[./-]|$)/;

describe('the shape of src', () => {
  const files = sources('src', '.ts');

  it(`holds files of at most ${longestFile} lines and functions of at most ${longestFunction}`, () => {
    expect(files.flatMap(tooLong)).toEqual([]);
  });

  it('has named exports only, and no state at module level', () => {
    expect(files.flatMap(unwanted)).toEqual([]);
  });

  it('has a public door that only re-exports', () => {
    const door = files.find(({ path }) => path === 'src/index.ts');
    const kinds = door === undefined ? [] : syntaxOf(door).statements.map((node) => ts.SyntaxKind[node.kind]);
    expect(new Set(kinds)).toEqual(new Set(['ExportDeclaration']));
  });

  it('has no drawer for everything', () => {
    expect(files.map(({ path }) => path).filter((path) => drawers.test(path))).toEqual([]);
  });

  it('says on every exported function what it means', () => {
    expect(files.flatMap(undocumented)).toEqual([]);
  });
});

describe('the shape rules catch', () => {
  it('a long file and a long function', () => {
    const long = `export function f() {\n${'1;\n'.repeat(longestFile)}}\n`;
    expect(tooLong({ path: 'a.ts', text: long })).toHaveLength(2);
  });

  it.each([
    'export default 1;',
    'export { a as default };',
    'let count = 0;',
    'var a: any = 1;',
    'enum A { b }',
  ])('%s', (text) => {
    expect(unwanted({ path: 'a.ts', text }).length).toBeGreaterThan(0);
  });

  it('an exported function without a word', () => {
    expect(undocumented({ path: 'a.ts', text: 'export function f() {}' })).toHaveLength(1);
    expect(undocumented({ path: 'a.ts', text: '/** Why. */\nexport function f() {}' })).toEqual([]);
  });
});

function tooLong(file: SourceFile): string[] {
  const syntax = syntaxOf(file);
  const found: string[] = [];
  const lines = file.text.split('\n').length - 1;
  const most = kernels.test(file.path) ? longestKernel : longestFunction;
  if (lines > longestFile) found.push(`${file.path}: ${lines} lines`);
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node)) {
      const first = syntax.getLineAndCharacterOfPosition(node.getStart()).line;
      const span = syntax.getLineAndCharacterOfPosition(node.end).line - first + 1;
      if (span > most) found.push(`${file.path}:${first + 1}: a function of ${span} lines`);
    }
    ts.forEachChild(node, visit);
  };
  visit(syntax);
  return found;
}

function unwanted(file: SourceFile): string[] {
  const found: string[] = [];
  const say = (what: string): void => void found.push(`${file.path}: ${what}`);
  const visit = (node: ts.Node): void => {
    if (ts.isExportAssignment(node)) say('a default export');
    if (ts.isExportSpecifier(node) && node.name.text === 'default') say('a default export');
    if (ts.isEnumDeclaration(node)) say('an enum');
    if (node.kind === ts.SyntaxKind.AnyKeyword) say('any');
    if (ts.isVariableStatement(node) && ts.isSourceFile(node.parent)) {
      if ((node.declarationList.flags & ts.NodeFlags.Const) === 0) say('a variable at module level');
    }
    ts.forEachChild(node, visit);
  };
  visit(syntaxOf(file));
  if (/@ts-(?:ignore|nocheck)/.test(file.text)) say('a muted type check');
  return found;
}

function undocumented(file: SourceFile): string[] {
  return syntaxOf(file).statements.flatMap((statement) => {
    if (!ts.isFunctionDeclaration(statement) || ts.getJSDocCommentsAndTags(statement).length > 0) return [];
    const exported = statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;
    return exported ? [`${file.path}: ${statement.name?.text ?? 'a function'} has no docstring`] : [];
  });
}
