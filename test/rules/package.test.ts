import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inRange } from './node-range.ts';
import { root } from './source-files.ts';

interface Locked {
  readonly engines?: { readonly node?: string };
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly optional?: boolean;
}

const read = (name: string): string => readFileSync(join(root, name), 'utf8');
const manifest = JSON.parse(read('package.json')) as Locked & { bin: Record<string, string> };
const lock = JSON.parse(read('package-lock.json')) as { packages: Readonly<Record<string, Locked>> };

/** The oldest Node of each line that we promise (README), by the project's own `engines`. */
const promised = ['20.19.0', '22.13.0', '24.0.0'];

describe('the package', () => {
  it('shows nothing at the top level but what the plan names', () => {
    const allowed = [
      'DEVELOPERS.md',
      'LICENSE',
      'README.md',
      'bin',
      'fixtures',
      'package-lock.json',
      'package.json',
      'src',
      'test',
      'tsconfig.json',
    ];
    const built = new Set(['node_modules', 'dist', 'demo-out', 'coverage']);
    const shown = readdirSync(root).filter((name) => !name.startsWith('.') && !built.has(name));
    expect(shown.sort()).toEqual(allowed.sort());
  });

  it('locks no download address', () => {
    expect(read('package-lock.json')).not.toContain('"resolved": "http');
    expect(read('.npmrc')).toContain('omit-lockfile-registry-resolved=true');
  });

  it('locks what package.json asks, so that npm ci accepts it', () => {
    const top = lock.packages[''];
    expect(top?.dependencies).toEqual(manifest.dependencies);
    expect(top?.devDependencies).toEqual(manifest.devDependencies);
  });

  it.each(promised)('works on Node %s, as each package it locks says', (version) => {
    const refusing = Object.entries(lock.packages).filter(
      ([, { engines, optional }]) =>
        optional !== true && engines?.node !== undefined && !inRange(version, engines.node),
    );
    expect(refusing.map(([name, { engines }]) => `${name} ${engines?.node ?? ''}`)).toEqual([]);
  });

  it('names a command that is there', () => {
    expect(manifest.bin['mantelwright']).toBe('bin/mantelwright.js');
    expect(read('bin/mantelwright.js').startsWith('#!/usr/bin/env node\n')).toBe(true);
  });
});

describe('the range reader', () => {
  it.each([
    ['20.19.0', '>=18', true],
    ['20.19.0', '^20.19.0 || ^22.13.0 || >=24', true],
    ['20.18.3', '^20.19.0 || ^22.13.0 || >=24', false],
    ['23.0.0', '^20.19.0 || ^22.13.0 || >=24', false],
    ['24.1.0', '^20.19.0 || ^22.13.0 || >=24', true],
    ['20.19.0', '>= 22.12.0', false],
    ['20.19.0', '20 || >=22', true],
    ['21.0.0', '20.x || >=22', false],
    ['20.19.0', '*', true],
    ['20.19.0', '>20', false],
    ['20.19.5', '~20.19', true],
    ['20.20.0', '~20.19', false],
    ['20.20.0', '>=18 <20.20', false],
  ])('%s in %s: %s', (version, range, expected) => {
    expect(inRange(version, range)).toBe(expected);
  });
});
