import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesBelow, root } from './source-files.ts';

/** What must stand nowhere in the project. Written so that this file does not hold what it looks for. */
const unwanted: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['a folder of one machine', /(?:^|[\s'"`(=:])\/(?:home|root|Users|mnt|work|tmp|farm)\/\w/],
  ['a drive of one machine', /\b[A-Z]:\\\w/],
  ['a registry host', /https?:\/\/(?:registry|npm|proxy|mirror)\b/i],
  ['an unfinished place', /\b(?:TO[D]O|FIX[M]E|XX[X]|HAC[K])\b/],
  ['a merge left open', /^(?:<{7}|>{7}) /m],
];

const ignored = /^(?:package-lock\.json|LICENSE)$|\.(?:png|jpg|ico|woff2?)$/;

describe('words that stand nowhere', () => {
  it.each(unwanted)('%s', (_what, pattern) => {
    const files = allFiles();
    expect(files.length).toBeGreaterThan(20);
    const found = files.flatMap((path) =>
      readFileSync(join(root, path), 'utf8')
        .split('\n')
        .flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}: ${line.trim()}`] : [])),
    );
    expect(found).toEqual([]);
  });

  it('and each pattern finds what it is for', () => {
    const samples = [
      ['const a = "', '/home', '/me/x"'].join(''),
      ['C:', '\\Users'].join(''),
      ['http:/', '/registry.example'].join(''),
      ['// TO', 'DO later'].join(''),
      ['<<<<', '<<< ours'].join(''),
    ];
    expect(samples.map((text, index) => unwanted[index]?.[1].test(text))).toEqual(samples.map(() => true));
  });
});

/** The files of the repository, or all files here where there is no repository (an unpacked archive). */
function allFiles(): string[] {
  const listed = existsSync(join(root, '.git'))
    ? execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' }).split('\0')
    : filesBelow('');
  return listed.filter((path) => path !== '' && !ignored.test(path) && existsSync(join(root, path)));
}
