/**
 * The questions whose answer is being carried out. Until it is on the disk and has had its effect, an answer is the only one
 * to its question: on a slow disk the next would be to whatever is asked after it.
 */
export class AnswersUnderWay {
  /** How many are under way by question: what counts at any turn may overlap with others. */
  readonly #turns = new Map<string, number>();

  /** The question that may be answered now, of the one that is asked; null while an answer to it is being carried out. */
  open(turn: string): string | null {
    return this.#turns.has(turn) ? null : turn;
  }

  /**
   * Keeps a question closed until this has settled.
   * @param carriedOut settles when the answer is on the disk and has had its effect
   * @throws whatever that is rejected with
   */
  async until(turn: string, carriedOut: () => Promise<void>): Promise<void> {
    this.#count(turn, 1);
    try {
      await carriedOut();
    } finally {
      this.#count(turn, -1);
    }
  }

  #count(turn: string, change: 1 | -1): void {
    const underWay = (this.#turns.get(turn) ?? 0) + change;
    if (underWay === 0) this.#turns.delete(turn);
    else this.#turns.set(turn, underWay);
  }
}
