import type { Debrief, FaultDebrief } from '../../rehearsal/debrief.ts';
import { clockText } from '../../session/viewer.ts';

const ways: Record<NonNullable<FaultDebrief['noticed']>['by'], string> = {
  stop: 'stopped for',
  line: 'warned with',
  reading: 'refused the reading at',
  code: 'judged code',
};

const outcomes: Record<Debrief['outcome'], string> = {
  signedOff: 'signed off',
  ended: 'ended without sign-off',
  left: 'left before its end',
};

function faultLine({ fault, phase, wrong, noticed }: FaultDebrief): string {
  const head = `${fault}@${phase}: ${wrong}`;
  if (!noticed) return `MISSED   ${head}`;
  const { by, what, step, afterS } = noticed;
  return `noticed  ${head} After ${clockText(afterS * 1000)} the session ${ways[by]} ${what} (${step}).`;
}

/** The debrief in lines for the screen. */
export function debriefLines({ outcome, sessionS, faults, stops, unclear }: Debrief): string[] {
  const missed = faults.filter(({ noticed }) => !noticed).length;
  return [
    `Debrief: ${outcomes[outcome]} after ${clockText(sessionS * 1000)}; faults that came: ${faults.length}, missed: ${missed}; replies not understood: ${unclear}.`,
    ...faults.map(faultLine),
    ...stops.map(
      ({ atS, step, cause }) => `stop     ${clockText(atS * 1000)} ${step} ${cause ?? '(no cause)'}`,
    ),
  ];
}
