import type { Import, SourceFile } from './source-files.ts';
import { importsOf } from './source-files.ts';

/** The stages of the flow, each free to import those before it. */
export const stages = [
  'shop',
  'plan',
  'parts',
  'stock',
  'patterns',
  'choice',
  'cuts',
  'check',
  'sheet',
  'rack',
] as const;

/**
 * Shared shapes that lie below the file that names them: type-only, so nothing runs upstream.
 * A part says which kinds of defect it accepts and which board face it is pinned to.
 */
const typesFromBelow: readonly (readonly [from: string, to: string])[] = [
  ['src/flow/parts/', 'src/flow/stock/defect.ts'],
];

/** Packages of the registry, and the one folder that may use each. */
const packageHomes: ReadonlyMap<string, string> = new Map([
  ['commander', 'src/shell/'],
  ['csv-parse/sync', 'src/base/csv/'],
  ['csv-stringify/sync', 'src/base/csv/'],
  ['javascript-lp-solver', 'src/base/lp/'],
]);

/** What is wrong with the imports of one file of `src`, in words; empty when the order holds. */
export function importFaults(file: SourceFile): string[] {
  return importsOf(file).flatMap((taken) => {
    const why = wrongWith(file.path, taken);
    return why === null ? [] : [`${file.path} imports ${taken.to}: ${why}`];
  });
}

function wrongWith(from: string, { to, typeOnly }: Import): string | null {
  if (to.startsWith('node:')) return from.startsWith('src/shell/') ? null : 'only src/shell may use node:';
  if (!to.startsWith('src/')) return wrongPackage(from, to);
  if (!to.endsWith('.ts')) return 'relative imports name the .ts file';
  const source = folderOf(from);
  const target = folderOf(to);
  if (source === target) return null;
  switch (source) {
    case 'base':
      return 'base imports only base';
    case 'trade':
      return target === 'base' ? null : 'trade imports only base';
    case 'decide':
      return ['base', 'trade', 'pipeline'].includes(target) || isStage(target) ? null : 'not above decide';
    case 'pipeline':
      return ['base', 'trade'].includes(target) || isStage(target) ? null : 'not above the pipeline';
    case 'index':
      return target === 'shell' ? 'the public door has no shell behind it' : null;
    case 'shell':
      return target === 'index' ? null : 'the shell takes the core through src/index.ts only';
    default:
      return stageImport(from, source, to, target, typeOnly);
  }
}

function stageImport(
  from: string,
  source: string,
  to: string,
  target: string,
  typeOnly: boolean,
): string | null {
  if (!isStage(source)) return `${source} is no folder of the plan`;
  if (target === 'base' || target === 'trade') return null;
  if (!isStage(target)) return 'a stage imports base, trade and the stages before it';
  if (source === 'check' && !typeOnly) return 'the check shares only types with the stages it judges';
  if (order(target) < order(source)) return null;
  const allowed = typesFromBelow.some(([start, end]) => from.startsWith(start) && to === end);
  return typeOnly && allowed ? null : `${target} comes after ${source}`;
}

function wrongPackage(from: string, to: string): string | null {
  const home = packageHomes.get(to);
  if (home === undefined) return 'a package without a home in this project';
  return from.startsWith(home) ? null : `only ${home} may use it`;
}

/** `base`, `trade`, a stage's name, `decide`, `shell`, or the name of a file that stands in src itself. */
function folderOf(path: string): string {
  const [, first = '', second = ''] = path.split('/');
  if (first === 'flow') return second;
  return first.endsWith('.ts') ? first.slice(0, -'.ts'.length) : first;
}

function order(stage: string): number {
  return (stages as readonly string[]).indexOf(stage);
}

function isStage(folder: string): boolean {
  return order(folder) >= 0;
}
