/** One array of all the pieces in order. */
export function concatenate(pieces: readonly Float32Array[]): Float32Array {
  const all = new Float32Array(pieces.reduce((length, piece) => length + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
