import type { Device } from './device.ts';
import type { ServerProcess } from './server.ts';

/** What stood between a stop and its answer. */
export type Between = 'nothing' | 'serverGone' | 'lineBroken';

export interface MeasuredStop {
  readonly between: Between;
  readonly answeredMs: number | null;
  /** Until the last face that could had shown it; null where there was nothing to show, or it was not to be measured. */
  readonly facesMs: number | null;
  readonly facesLate: number;
  /** Of the time until then: how long the server and this program stood in line for a processor; null: not known. */
  readonly inLineMs: number | null;
  readonly shouted: boolean;
  readonly beneath: string;
}

const GIVEN_UP_MS = 60_000;
const FACES_WITHIN_MS = 15_000;

/** Sends a stop from this device and measures what becomes of it, at all faces of its bay. */
export async function measureStop(
  device: Device,
  faces: readonly Device[],
  server: ServerProcess,
  beneath: string,
  text?: string,
): Promise<MeasuredStop> {
  const sentMs = performance.now();
  const { changes, shouts } = device;
  const { disturbances } = server;
  const { isUp } = server;
  const { isThere } = device;
  const beforeMs = server.inLineMs;
  const wasShouting = device.connection.stop === 'unanswered';
  const shown = faces
    .filter(face => face.isThere && face.view !== null && ['working', 'held'].includes(face.view.state))
    .map(face => whenStopped(face));
  const turn = device.state?.turn ?? '';
  const answer = await device.do(
    text === undefined || turn === '' ? { do: 'stop' } : { do: 'say', turn, text, via: 'keys' },
    GIVEN_UP_MS,
  );
  const between: Between =
    !isUp || server.disturbances !== disturbances
      ? 'serverGone'
      : !isThere || device.changes !== changes
        ? 'lineBroken'
        : 'nothing';
  const stopped =
    answer?.message.type === 'ack' && answer.message.stop === 'stopped' && !answer.message.again;
  const seen = stopped && between === 'nothing' ? await Promise.all(shown.map(({ at }) => at)) : [];
  for (const { giveUp } of shown) giveUp();
  const afterMs = server.inLineMs;
  const isClean = server.disturbances === disturbances;
  const times = seen.flatMap(each => (typeof each === 'number' ? [each - sentMs] : []));
  return {
    between,
    answeredMs: answer === null ? null : answer.atMs - sentMs,
    facesMs: isClean && times.length > 0 ? Math.max(...times) : null,
    inLineMs: beforeMs === null || afterMs === null ? null : Math.max(0, afterMs - beforeMs),
    facesLate: isClean ? seen.filter(each => each === 'never').length : 0,
    shouted: wasShouting || device.shouts > shouts,
    beneath,
  };
}

/** When a face first shows that the session is stopped; `changed` where its line broke before. */
function whenStopped(face: Device) {
  const { changes } = face;
  let giveUp = () => {};
  const at = new Promise<number | 'changed' | 'never'>(resolve => {
    const end = (what: number | 'changed' | 'never') => {
      unwatch();
      clearTimeout(timer);
      resolve(what);
    };
    const look = () => {
      if (face.changes !== changes) end('changed');
      else if (face.view?.state === 'stopped') end(face.tookAtMs);
    };
    const unwatch = face.watch(look);
    const timer = setTimeout(() => end(face.changes === changes ? 'never' : 'changed'), FACES_WITHIN_MS);
    giveUp = () => end('changed');
  });
  return { at, giveUp };
}
