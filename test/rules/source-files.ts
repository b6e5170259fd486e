import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** The project's own folder. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** One file of ours, its path from the root with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** One import or re-export; `to` is a path from the root for a relative one, else the name as written. */
export interface Import {
  readonly to: string;
  readonly typeOnly: boolean;
}

const notOurs: ReadonlySet<string> = new Set(['node_modules', 'dist', 'demo-out', 'coverage', '.git', 'out']);

/** Every file below a folder, sorted, as paths from the root. Built and installed folders are left out. */
export function filesBelow(folder: string): string[] {
  const found: string[] = [];
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    if (notOurs.has(entry.name)) continue;
    const path = posix.join(folder, entry.name);
    if (entry.isDirectory()) found.push(...filesBelow(path));
    else if (entry.isFile()) found.push(path);
  }
  return found.sort();
}

/** The files below a folder whose names end in one of the endings, read. */
export function sources(folder: string, ...endings: string[]): SourceFile[] {
  return filesBelow(folder)
    .filter((path) => endings.some((ending) => path.endsWith(ending)))
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));
}

const parsed = new Map<string, ts.SourceFile>();

/** The syntax tree of a file, parsed once for all the questions asked of it. */
export function syntaxOf({ path, text }: SourceFile): ts.SourceFile {
  const known = parsed.get(path);
  if (known?.text === text) return known;
  const syntax = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  parsed.set(path, syntax);
  return syntax;
}

/** All that a file imports: statements, re-exports, `import('…')` calls and `import('…')` types. */
export function importsOf(file: SourceFile): Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Node | undefined, typeOnly: boolean): void => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const name = specifier.text;
    const to = name.startsWith('.') ? posix.join(posix.dirname(file.path), name) : name;
    found.push({ to, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, takesTypesOnly(node));
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal, true);
    ts.forEachChild(node, visit);
  };
  visit(syntaxOf(file));
  return found;
}

/** `import type …`, or named imports each marked `type`. */
function takesTypesOnly(node: ts.ImportDeclaration): boolean {
  const clause = node.importClause;
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const bindings = clause.namedBindings;
  if (clause.name !== undefined || bindings === undefined || !ts.isNamedImports(bindings)) return false;
  return bindings.elements.length > 0 && bindings.elements.every((element) => element.isTypeOnly);
}
