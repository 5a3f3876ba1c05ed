import { describe, expect, it } from 'vitest';
import { planSetUp } from './debian.ts';

const computer = {
  debian: true,
  root: true,
  ci: false,
  terminal: true,
  dpkgStatus: 'sox install ok installed\nflite deinstall ok config-files\n',
};
const needed = ['sox', 'flite', 'tmux'];

it('nothing is installed when every package is there', () => {
  expect(planSetUp(['sox'], computer)).toEqual({ kind: 'nothingToDo' });
  expect(planSetUp(['sox'], { ...computer, root: false })).toEqual({ kind: 'nothingToDo' });
});

describe('what is missing, or was removed,', () => {
  it('is asked about before it is installed', () => {
    expect(planSetUp(needed, computer)).toEqual({ kind: 'ask', packages: ['flite', 'tmux'] });
  });

  it('is installed unasked in CI, with a terminal and without one', () => {
    for (const terminal of [true, false])
      expect(planSetUp(needed, { ...computer, ci: true, terminal })).toEqual({
        kind: 'install',
        packages: ['flite', 'tmux'],
      });
  });
});

it.each([
  [{ root: false }, 'only root may install them'],
  [{ root: false, ci: true }, 'only root may install them'],
  [{ debian: false }, 'this is not Debian'],
  [{ debian: false, ci: true }, 'this is not Debian'],
  [{ terminal: false }, 'nobody is here to be asked; with CI=1 it is done unasked'],
])('where that cannot be done (%o) the packages are named', (difference, why) => {
  expect(planSetUp(needed, { ...computer, ...difference })).toEqual({
    kind: 'cannot',
    sentence: `Tests with real speech and sound need flite tmux (${why}); install them, or expect those tests to fail.`,
  });
});
