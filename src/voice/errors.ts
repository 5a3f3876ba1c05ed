/** Sound, speech or a device failed; the message is one sentence: what was wrong, where, what to do. */
export class VoiceError extends Error {}
