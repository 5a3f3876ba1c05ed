/** What the set-up found out about the computer it runs on. */
export interface Computer {
  readonly debian: boolean;
  readonly root: boolean;
  /** A run that nobody watches, on a machine made for it: the `CI` of the environment. */
  readonly ci: boolean;
  /** Somebody sits at a terminal and can be asked. */
  readonly terminal: boolean;
  /** `dpkg-query`'s answer, a line per package: its name and its status. */
  readonly dpkgStatus: string;
}

export type SetUpPlan =
  | { readonly kind: 'nothingToDo' }
  | { readonly kind: 'install' | 'ask'; readonly packages: readonly string[] }
  | { readonly kind: 'cannot'; readonly sentence: string };

/**
 * Which of the needed packages are to be installed, or one sentence why they are not. Nobody's computer is changed
 * without a word: outside CI somebody has to agree.
 */
export function planSetUp(
  needed: readonly string[],
  { debian, root, ci, terminal, dpkgStatus }: Computer,
): SetUpPlan {
  const installed = new Set(
    dpkgStatus
      .split('\n')
      .filter(line => line.endsWith(' install ok installed'))
      .map(line => line.split(' ')[0]),
  );
  const packages = needed.filter(name => !installed.has(name));
  if (packages.length === 0) return { kind: 'nothingToDo' };
  if (debian && root && ci) return { kind: 'install', packages };
  if (debian && root && terminal) return { kind: 'ask', packages };
  return { kind: 'cannot', sentence: withoutThem(packages, whyNot(debian, root)) };
}

function whyNot(debian: boolean, root: boolean): string {
  if (!debian) return 'this is not Debian';
  return root ? 'nobody is here to be asked; with CI=1 it is done unasked' : 'only root may install them';
}

/** What to do where packages are not installed. */
export const withoutThem = (packages: readonly string[], why: string) =>
  `Tests with real speech and sound need ${packages.join(' ')} (${why}); install them, or expect those tests to fail.`;
