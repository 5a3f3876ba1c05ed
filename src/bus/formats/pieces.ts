/** Longest piece that is still kept while its end is waited for; a frame is far shorter in every format. */
const LONGEST_PIECE = 256;

/**
 * Cuts a stream of text into lines or messages. A piece that never ends is handed on cut short, so that rubbish
 * cannot fill the memory; its rest is dropped up to the next end.
 * @param end what ends a piece: `\n` for logs, `\r` for serial adapters
 */
export function createPieceCutter(end: '\n' | '\r') {
  let open = '';
  let dropping = false;
  return {
    /** Takes the next part of the stream, of any length; gives the pieces that it ends. */
    push(text: string): string[] {
      const pieces = (open + text).split(end);
      open = pieces.pop() ?? '';
      if (dropping && pieces.length > 0) {
        pieces.shift();
        dropping = false;
      }
      if (open.length > LONGEST_PIECE) {
        if (!dropping) pieces.push(open.slice(0, LONGEST_PIECE));
        open = '';
        dropping = true;
      }
      return pieces;
    },
    /** Gives what came last without an end. */
    finish(): string[] {
      const last = dropping || open === '' ? [] : [open];
      open = '';
      return last;
    },
  };
}
