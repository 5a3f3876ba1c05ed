/**
 * Small things that this browser keeps from visit to visit. One that refuses keeps nothing, and that is no reason to refuse
 * anything else: what was to be kept then holds for this visit.
 */
export const kept = {
  /** Null where nothing is kept under this key, or nothing may be read. */
  read(key: string): string | null {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  },
  write(key: string, text: string): void {
    try {
      localStorage.setItem(key, text);
    } catch {
      // It holds for this visit.
    }
  },
  remove(key: string): void {
    try {
      localStorage.removeItem(key);
    } catch {
      // What cannot be reached was not kept either.
    }
  },
};
