/** What the person at the keys asks for; the session decides what comes of it. */
export interface FaceActions {
  /** A line was typed and sent. */
  onType(text: string): void;
  /** Escape: stop everything, now. */
  onStop(): void;
  /** Ctrl-C twice: whoever runs the session closes the face. */
  onLeave(): void;
  /** No key comes any more: what was piped is over, or the terminal is gone. */
  onKeysEnded(): void;
}

export interface Face {
  /** Settles when the face is closed; rejects when it failed, after the terminal was given back. */
  readonly done: Promise<void>;
  /** Closes the face and gives the terminal back as it was. Safe to call again. */
  close(): void;
  /** Ctrl-C, where the terminal sends it as a signal: leaves, where there is somebody at the keys the second time. */
  interrupt(): void;
}
