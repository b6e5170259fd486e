import { describe, expect, it } from 'vitest';
import type { Steps } from '../../src/index.ts';
import { driveHere } from '../../src/shell/command/drive.ts';
import { progressWords } from '../../src/shell/command/progress-line.ts';
import { testWorld } from './test-world.ts';

const unlimited = { deadline: null };

/** A search that would take a hundred steps, ends when told to, and gives the number of the step it reached. */
function* counting(stop: () => boolean, each: (step: number) => void): Steps<number> {
  for (let step = 1; step <= 100; step += 1) {
    if (stop()) return step;
    each(step);
    yield { doing: `step ${step}`, value: 200 - step, bound: 100 };
  }
  return 101;
}

describe('driving a solve', () => {
  it('gives its end', async () => {
    const world = testWorld();
    const driven = await driveHere(({ stop }) => counting(stop, () => undefined), world, unlimited);
    expect(driven).toEqual({ value: 101, ended: 'done' });
    expect(world.err()).toBe('');
    expect(world.listeners()).toBe(0);
  });

  it('writes a line every ten seconds where nobody watches, and none on a quick solve', async () => {
    const clock = { now: 0 };
    const world = testWorld({ now: () => clock.now, millisecondsBetweenLines: 10_000 });
    await driveHere(({ stop }) => counting(stop, () => (clock.now += 300)), world, unlimited);
    expect(world.err()).toBe(
      'step 34: best 166.00, bound 100.00, 39.8 % apart\nstep 68: best 132.00, bound 100.00, 24.2 % apart\n',
    );
  });

  it('hears Ctrl-C between two steps and keeps what there is', async () => {
    const world = testWorld();
    const each = (step: number): void => {
      if (step === 7) world.interrupt();
    };
    const driven = await driveHere(({ stop }) => counting(stop, each), world, unlimited);
    expect(driven).toEqual({ value: 8, ended: 'interrupted' });
    expect(world.listeners()).toBe(0);
  });

  it('lets the event loop run between two steps', async () => {
    const world = testWorld();
    setImmediate(() => setImmediate(() => world.interrupt()));
    const driven = await driveHere(({ stop }) => counting(stop, () => undefined), world, unlimited);
    expect(driven.ended).toBe('interrupted');
    expect(driven.value).toBeLessThan(10);
  });

  it('ends at the time limit', async () => {
    const clock = { now: 0 };
    const world = testWorld({ now: () => clock.now });
    const driven = await driveHere(({ stop }) => counting(stop, () => (clock.now += 10)), world, {
      deadline: 55,
    });
    expect(driven).toEqual({ value: 7, ended: 'out of time' });
  });

  it('shows progress only where a person watches, not more than ten times a second, and wipes it', async () => {
    const clock = { now: 0 };
    const world = testWorld({ now: () => clock.now, isTerminal: true });
    await driveHere(({ stop }) => counting(stop, () => (clock.now += 10)), world, unlimited);
    const drawn = world
      .err()
      .split('\r')
      .filter((line) => line.includes('step'));
    expect(drawn.length).toBeGreaterThan(5);
    expect(drawn.length).toBeLessThanOrEqual(11);
    expect(world.err().endsWith('\r\u001b[2K')).toBe(true);
  });

  it('gives back the interrupt when the solve fails', async () => {
    const world = testWorld();
    const failing = driveHere(
      ({ stop }) =>
        counting(stop, () => {
          throw new Error('a bug');
        }),
      world,
      unlimited,
    );
    await expect(failing).rejects.toThrow('a bug');
    expect(world.listeners()).toBe(0);
  });
});

describe('the words of progress', () => {
  it.each([
    [{ doing: 'reading', value: null, bound: null }, 'reading'],
    [{ doing: 'pricing', value: null, bound: 12 }, 'pricing: bound 12.00'],
    [{ doing: 'diving', value: 20, bound: 15 }, 'diving: best 20.00, bound 15.00, 25.0 % apart'],
    [{ doing: 'diving', value: 0, bound: 0 }, 'diving: best 0.00, bound 0.00'],
  ])('%o', (progress, words) => {
    expect(progressWords(progress)).toBe(words);
  });
});
