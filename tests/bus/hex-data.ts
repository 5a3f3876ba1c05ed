/** Bytes from hexadecimal digits, with or without spaces between them. */
export const hexData = (text: string): Uint8Array =>
  Uint8Array.from(Buffer.from(text.replaceAll(' ', ''), 'hex'));
