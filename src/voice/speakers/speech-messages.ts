/** Between a program and its thread that makes speech, in Node and in a page alike. */
export interface SpeechRequest {
  readonly id: number;
  readonly text: string;
}

export type SpeechReply =
  | { readonly id: number; readonly samples: Float32Array<ArrayBuffer>; readonly sampleRateHz: number }
  | { readonly id: number; readonly failure: string };
