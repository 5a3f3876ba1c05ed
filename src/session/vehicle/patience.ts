/**
 * Time by which absence is judged: between two ticks never more than one of them passes, however late the second comes.
 * A program that was held up, or a rehearsal whose time passes faster, has not listened meanwhile, so what it did not
 * hear is no silence. Values grow old by the session's clock all the same.
 * @param nowS the session's clock
 * @param tickS how far apart ticks are meant to be
 */
export function createPatience(nowS: () => number, tickS: number) {
  let tickedS = nowS();
  let passedS = tickedS;
  const now = () => passedS + Math.min(Math.max(0, nowS() - tickedS), tickS);
  return {
    nowS: now,
    tick(): void {
      passedS = now();
      tickedS = nowS();
    },
  };
}
