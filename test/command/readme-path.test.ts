import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../src/index.ts';
import { readReadme, shownCommands } from '../rules/readme-text.ts';
import { namesBelow } from './job-folder.ts';
import { type Ran, runIn, scratchFolder, testWorld } from './test-world.ts';

/** The README's commands on one's own mantel, as words after the program's name, the first of each kind. */
const path = shownCommands(readReadme())
  .flatMap((line) => /^node bin\/mantelwright\.js (.*? my-mantel)\b/.exec(line)?.[1] ?? [])
  .filter((line, index, all) => all.indexOf(line) === index);

/** What is measured: the wall as it was read first, and as it was found to be later on. */
interface Wall {
  readonly new: readonly string[];
  /** Files filled in after `new`. */
  readonly files: Readonly<Record<string, string>>;
  readonly front: readonly [first: string, later: string, last: string];
  /** Length of the front's ledger by each, in ticks. */
  readonly ledger: readonly [first: number, later: number, last: number];
}

const inch = 8128;
const mm = 320;
const inches: Wall = {
  new: [],
  files: {},
  front: ['60', '58 1/4', '57 3/4'],
  ledger: [60 * inch, 58.25 * inch, 57.75 * inch],
};
const millimetres: Wall = {
  new: ['--blank'],
  files: {
    'shop.csv': 'setting,value\nunits,mm\nrip kerf,3\ncrosscut kerf,3\n',
    'mantel.csv':
      'setting,value\nface height,160\nthickness,20\nledger section,20 x 70\nheight above opening,350\n',
    'legs.csv': 'leg,along wall,projection,wall corner\nleft,300,130,90\nfront,1500,190,90\nright,230,130,\n',
    'boards.csv':
      'board,quantity,length,width,thickness,surface,price\nA,3,2600,240,27 mm,rough,60\nB,4,1900,230,27 mm,rough,40\n',
  },
  front: ['1500', '1480', '1465.5'],
  ledger: [1500 * mm, 1480 * mm, 1465.5 * mm],
};

describe('the path of the README, from new to rack put in an empty folder', () => {
  it('goes through the job in its order', () => {
    const commands = path.map((line) => line.replace(' my-mantel', ''));
    const order = ['new', 'plan', 'layout', 'rack put'].map((command) => commands.indexOf(command));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBe(0);
    for (const command of ['faces', 'tally', 'buy']) expect(commands).toContain(command);
  });

  it.each([
    ['inches', inches],
    ['millimetres', millimetres],
  ] as const)(
    'walked in %s, with the measurements changed on the way',
    async (_unit, wall) => {
      const cwd = scratchFolder();
      const run = (line: string, ...more: string[]): Promise<Ran> =>
        runIn(testWorld({ cwd }), ...line.split(' '), ...more);
      const file = (name: string): string => join(cwd, 'my-mantel', name);
      const remeasure = (from: string, to: string): void => {
        const legs = readFileSync(file('legs.csv'), 'utf8');
        const measured = legs.replace(new RegExp(`^front,${from},`, 'm'), `front,${to},`);
        if (from !== to) expect(measured).not.toBe(legs);
        writeFileSync(file('legs.csv'), measured);
      };
      const ledgerOf = (text: string): number | undefined =>
        (JSON.parse(text) as Layout).boards
          .flatMap(({ pieces }) => pieces)
          .find(({ part }) => part === 'front ledger')?.length;

      expect((await run('new my-mantel', ...wall.new)).code).toBe(0);
      for (const [name, text] of Object.entries(wall.files)) writeFileSync(file(name), text);
      expect(await run('plan my-mantel')).toMatchObject({ code: 0, err: '' });
      expect(readFileSync(file('parts.csv'), 'utf8')).toMatch(/^front ledger,/m);
      const first = await run('layout my-mantel', '--json', '--effort', '0');
      expect([first.code, ledgerOf(first.out)]).toEqual([0, wall.ledger[0]]);

      // Measured again before the first cut: nothing goes on with the old parts, until the plan is taken.
      remeasure(wall.front[0], wall.front[1]);
      for (const line of path.filter((one) => /^(?:layout|faces|buy|rack put)\b/.test(one)))
        expect(await run(line)).toMatchObject({ code: 2, out: '' });
      expect(await run('plan my-mantel')).toMatchObject({ code: 0, err: '' });
      expect(await run('tally my-mantel')).toMatchObject({ code: 0, err: '' });
      expect(await run('buy my-mantel', '--draws', '2')).toMatchObject({ code: 0, err: '' });
      expect(await run('faces my-mantel', '--effort', '0')).toMatchObject({ code: 0, err: '' });
      const second = await run('layout my-mantel', '--json', '--effort', '0');
      expect([second.code, ledgerOf(second.out)]).toEqual([0, wall.ledger[1]]);

      // And once more, by the other mend.
      remeasure(wall.front[1], wall.front[2]);
      expect((await run('check my-mantel my-mantel/out/layout.json')).code).toBe(2);
      const third = await run('layout my-mantel', '--replan', '--json', '--effort', '0');
      expect([third.code, ledgerOf(third.out)]).toEqual([0, wall.ledger[2]]);
      expect(await run('check my-mantel my-mantel/out/layout.json')).toMatchObject({ code: 0, err: '' });
      const put = await run('rack put my-mantel');
      expect(put).toMatchObject({ code: 0, err: '' });
      expect(put.out).toMatch(/used up/);
      expect(namesBelow(cwd)).toContain('rack.csv');
    },
    600_000,
  );
});
