/** What keeps texts under names, as a browser does. */
type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/**
 * Small things that this browser keeps. One that refuses keeps nothing, and that is no reason to refuse
 * anything else: what was to be kept then holds for this visit.
 * @param store looked up each time: a browser may refuse that already
 */
const keptIn = (store: () => Store) => ({
  /** Null where nothing is kept under this key, or nothing may be read. */
  read(key: string): string | null {
    try {
      return store().getItem(key);
    } catch {
      return null;
    }
  },
  write(key: string, text: string): void {
    try {
      store().setItem(key, text);
    } catch {
      // It holds for this visit.
    }
  },
  remove(key: string): void {
    try {
      store().removeItem(key);
    } catch {
      // What cannot be reached was not kept either.
    }
  },
});

/** Kept from visit to visit. */
export const kept = keptIn(() => localStorage);

/** Kept for this tab only: when its page is loaded anew, and no longer than the tab is there. */
export const keptInTab = keptIn(() => sessionStorage);
