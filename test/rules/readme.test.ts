import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseLayout } from '../../src/index.ts';
import { boardColumns } from '../../src/shell/read/boards.ts';
import { defectColumns } from '../../src/shell/read/defects.ts';
import { legColumns, mantelSettings } from '../../src/shell/read/mantel.ts';
import { partColumns } from '../../src/shell/read/parts.ts';
import { shopSettings } from '../../src/shell/read/shop-settings.ts';
import { readReadme, shownCommands, tableUnder } from './readme-text.ts';
import { root } from './source-files.ts';

const readme = readReadme();

/** A place that looks like a fresh, built clone, where commands may write. */
function clone(): string {
  const folder = mkdtempSync(join(tmpdir(), 'mantelwright-readme-'));
  for (const name of ['bin', 'dist', 'node_modules', 'package.json', 'package-lock.json'])
    symlinkSync(join(root, name), join(folder, name));
  cpSync(join(root, 'fixtures', 'jobs'), join(folder, 'fixtures', 'jobs'), { recursive: true });
  return folder;
}

describe('the commands of the README', () => {
  const commands = shownCommands(readme);
  const [demo, tests, ...usage] = commands;

  it('begin with the two of a fresh clone', () => {
    expect([demo, tests]).toEqual(['npm ci && npm run demo', 'npm ci && npm test']);
  });

  it('npm ci: the lock file has all that package.json asks for', () => {
    // A dry run stops short of replacing node_modules, from which these very tests run.
    const ran = spawnSync('npm', ['ci', '--dry-run', '--offline', '--ignore-scripts'], {
      cwd: root,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });
    expect(ran.stderr).not.toMatch(/npm error/);
    expect(ran.status).toBe(0);
  });

  it('npm test: is what runs now', () => {
    const scripts = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    expect(scripts.scripts['test']).toMatch(/types.*lint.*vitest run --config test\/vitest\.config\.ts$/);
  });

  it('npm run demo: ends well and says where the sheet is', () => {
    const folder = clone();
    const out = execFileSync('npm', ['run', 'demo'], { cwd: folder, encoding: 'utf8' });
    expect(out).toMatch(/^sheet: demo-out\/sheet\.html$/m);
    expect(existsSync(join(folder, 'demo-out', 'sheet.html'))).toBe(true);
    expect(existsSync(join(folder, 'demo-out', 'mantel-plan.svg'))).toBe(true);
  }, 600_000);

  it('the rest run as they stand, one after another', () => {
    expect(usage.length).toBeGreaterThan(5);
    const folder = clone();
    for (const command of usage) {
      const isBlank = command.includes('--blank');
      const line = isBlank ? command.replace('my-mantel', 'blank-mantel') : command;
      const ran = spawnSync('sh', ['-c', line], { cwd: folder, encoding: 'utf8' });
      // A slow machine says now and then how it stands.
      const stderr = ran.stderr.replace(/^[^\n]*(\d+ of \d+|: best|: bound|first layout)[^\n]*\n/gm, '');
      expect({ command, status: ran.status, stderr }).toEqual({ command, status: 0, stderr: '' });
    }
    expect(existsSync(join(folder, 'my-mantel', 'out', 'sheet.html'))).toBe(true);
  }, 600_000);
});

describe('the tables of the README', () => {
  const escaped = (text: string): string => text.replaceAll('|', '\\|');

  it('hold every setting of shop.csv with its default', () => {
    expect(tableUnder(readme, '### Settings of shop.csv')).toEqual(
      shopSettings.map((setting) => [
        `\`${setting.name}\``,
        setting.default,
        escaped(setting.unit),
        setting.meaning,
      ]),
    );
  });

  it('hold every setting of mantel.csv with its default', () => {
    expect(tableUnder(readme, '### Settings of mantel.csv')).toEqual(
      mantelSettings.map((setting) => [
        `\`${setting.name}\``,
        setting.default ?? 'must be given',
        escaped(setting.unit),
        setting.meaning,
      ]),
    );
  });

  it('hold the columns of every file', () => {
    const columns = new Map(
      tableUnder(readme, '## The files of a job').map(([file = '', names = '']) => [file, names]),
    );
    const row = (names: readonly { readonly name: string }[]): string =>
      `\`${names.map(({ name }) => name).join(',')}\``;
    expect(columns.get('`parts.csv`')).toBe(row(partColumns));
    expect(columns.get('`boards.csv`')).toBe(row(boardColumns));
    expect(columns.get('`defects.csv`')).toBe(row(defectColumns));
    expect(columns.get('`legs.csv`')).toBe(row(legColumns));
  });

  it('show a JSON answer of the right shape', () => {
    const shown = /^```json\n([\s\S]*?)^```$/m.exec(readme)?.[1] ?? '';
    const layout = parseLayout(JSON.parse(shown.replaceAll(/"(length|width)": 0/g, '"$1": 1')));
    expect(layout.ok ? [] : layout.problems).toEqual([]);
  });
});
