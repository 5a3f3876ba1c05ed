/** What the set-up found out about the computer it runs on. */
export interface Computer {
  readonly debian: boolean;
  readonly root: boolean;
  /** `dpkg-query`'s answer, a line per package: its name and its status. */
  readonly dpkgStatus: string;
}

export type SetUpPlan =
  | { readonly kind: 'nothingToDo' }
  | { readonly kind: 'install'; readonly packages: readonly string[] }
  | { readonly kind: 'cannot'; readonly sentence: string };

/** Which of the needed packages are to be installed, or one sentence why they cannot be. */
export function planSetUp(needed: readonly string[], { debian, root, dpkgStatus }: Computer): SetUpPlan {
  const installed = new Set(
    dpkgStatus
      .split('\n')
      .filter(line => line.endsWith(' install ok installed'))
      .map(line => line.split(' ')[0]),
  );
  const packages = needed.filter(name => !installed.has(name));
  if (packages.length === 0) return { kind: 'nothingToDo' };
  if (debian && root) return { kind: 'install', packages };
  const who = debian ? 'only root may install them' : 'this is not Debian';
  return {
    kind: 'cannot',
    sentence: `Tests with real speech and sound need ${packages.join(' ')} (${who}); install them, or expect those tests to fail.`,
  };
}
