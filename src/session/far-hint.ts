/** Somebody else's talk far away must not make the tool talk all the time; own choice. */
const NOT_SOONER_MS = 20_000;

/** When somebody far away is told to come nearer: once for a question, and not soon after the last time. */
export class FarHint {
  #last: { readonly question: string; readonly atMs: number } | null = null;

  /** Whether it is told now; then it is taken as told. */
  isDue(question: string, nowMs: number): boolean {
    const last = this.#last;
    if (last && (last.question === question || nowMs - last.atMs < NOT_SOONER_MS)) return false;
    this.#last = { question, atMs: nowMs };
    return true;
  }
}
