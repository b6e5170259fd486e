import { describe, expect, it } from 'vitest';
import { runIn, testWorld } from './test-world.ts';

describe('a command line that cannot be read', () => {
  it.each([
    [['layuot', 'x'], 'did you mean layout? "mantelwright --help" tells'],
    [['lay', 'x'], 'did you mean layout?'],
    [['LAYOUT', 'x'], 'did you mean layout?'],
    [['layout', 'x', '--sec', '1'], 'did you mean --seconds? "mantelwright layout --help" tells'],
    [['layout', 'x', '--Json'], 'did you mean --json?'],
    [['rack', 'lst'], 'did you mean list? "mantelwright rack --help" tells'],
    [['zzzzzzzz'], 'mend: "mantelwright --help" tells'],
    [['faces'], 'write "mantelwright faces [options] <job>"'],
    [['layout', 'a', 'b'], 'write "mantelwright layout [options] <job>"'],
  ])('%j is told what may have been meant', async (args, mend) => {
    const { code, out, err } = await runIn(testWorld(), ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^mantelwright: /);
    expect(err).toContain(mend);
  });
});
