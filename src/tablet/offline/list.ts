/** What a service worker keeps; made by the build. */
export interface OfflineList {
  /** Changes with any file. */
  readonly version: string;
  /** In which this version writes and goes on with records (`src/record/vocabulary/version.ts`). */
  readonly vocabulary: number;
  /** The page itself: kept before the service worker takes over. */
  readonly page: readonly string[];
  /** The recognizer and its model: kept once the page asks for it, across versions. */
  readonly hearing: readonly string[];
}
