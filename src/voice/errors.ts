export type VoiceErrorCode =
  /** The acoustic model or dictionary could not be read. */
  | 'modelUnusable'
  /** A wording has a word that nobody taught the recognizer to pronounce. */
  | 'wordUnknown'
  /** A number slot or grammar that cannot be listened for. */
  | 'grammarUnusable'
  /** Sound at a rate, or of a kind, that cannot be used. */
  | 'soundUnusable'
  /** A file or folder that cannot be read or written. */
  | 'fileUnusable'
  /** No recorder, or none that hears anything. */
  | 'microphoneUnusable'
  /** A player that fails or hangs. */
  | 'loudspeakerUnusable'
  /** A sentence that cannot be turned into sound. */
  | 'speechUnusable';

/** A fault in the voice chain: the message is one sentence, what was wrong, where and what to do. */
export class VoiceError extends Error {
  readonly code: VoiceErrorCode;

  constructor(code: VoiceErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'VoiceError';
    this.code = code;
  }
}
