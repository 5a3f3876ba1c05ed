import { VoiceError } from '../../../errors.ts';

/** Why an archive is no usable model: the rest of a sentence that begins with its name. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly todo: string;

  /** @param todo what to do about it; to bring the archive again when it is left out */
  constructor(wrong: string, todo = 'download it again', options?: ErrorOptions) {
    super(wrong, options);
    this.todo = todo;
  }
}

/** The one sentence for whoever brought the archive. */
export const refused = (archiveName: string, { message, todo }: Refusal): VoiceError =>
  new VoiceError('modelUnusable', `The model archive ${archiveName} ${message}; ${todo}.`);
