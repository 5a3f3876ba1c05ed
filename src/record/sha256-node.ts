import { hash } from 'node:crypto';

/** SHA-256 of a text's UTF-8 bytes, 64 lower-case hex digits. */
export const sha256Hex = (text: string): string => hash('sha256', text, 'hex');
