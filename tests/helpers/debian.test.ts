import { expect, it } from 'vitest';
import { planSetUp } from './debian.ts';

const computer = {
  debian: true,
  root: true,
  dpkgStatus: 'sox install ok installed\nflite deinstall ok config-files\n',
};

it('nothing is installed when every package is there', () => {
  expect(planSetUp(['sox'], computer)).toEqual({ kind: 'nothingToDo' });
  expect(planSetUp(['sox'], { ...computer, root: false })).toEqual({ kind: 'nothingToDo' });
});

it('what is missing, or was removed, is installed', () => {
  expect(planSetUp(['sox', 'flite', 'tmux'], computer)).toEqual({
    kind: 'install',
    packages: ['flite', 'tmux'],
  });
});

it.each([
  [{ root: false }, 'only root may install them'],
  [{ debian: false }, 'this is not Debian'],
])('where that cannot be done (%o) the packages are named', (difference, why) => {
  expect(planSetUp(['sox', 'flite', 'tmux'], { ...computer, ...difference })).toEqual({
    kind: 'cannot',
    sentence: `Tests with real speech and sound need flite tmux (${why}); install them, or expect those tests to fail.`,
  });
});
