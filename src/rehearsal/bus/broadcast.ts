import { encodeCanId, GLOBAL_ADDRESS } from '../../bus/can-id.ts';
import { DM1_PGN, formatDiagnostics } from '../../bus/diagnostics/dm1.ts';
import type { LampState, Lamps } from '../../bus/diagnostics/lamps.ts';
import { type CanFrame, j1939Frame, MAX_DATA_BYTES } from '../../bus/frame.ts';
import { MESSAGES } from '../../bus/messages.ts';
import { type ParameterContent, rangeOf, writeParameter } from '../../bus/parameter-codec.ts';
import { PARAMETERS, type ParameterDefinition } from '../../bus/parameters.ts';
import { announceToAll } from '../../bus/transport/announce.ts';
import type { ActiveCode } from './controller.ts';

/** The engine's own address, SAE J1939-81 (from memory). */
const ENGINE_ADDRESS = 0;
const DM1_REPEAT_S = 1;

interface Scheduled {
  readonly pgn: number;
  readonly repeatS: number;
  readonly priority: number;
  readonly parameters: readonly ParameterDefinition[];
}

/** What the engine's controller sends by itself: every group with something in it, fast ones first on the wire. */
const schedule: readonly Scheduled[] = MESSAGES.flatMap(({ pgn, repeatS }) =>
  repeatS === undefined
    ? []
    : [
        {
          pgn,
          repeatS,
          priority: repeatS <= 0.1 ? 3 : 6,
          parameters: PARAMETERS.filter(parameter => parameter.pgn === pgn),
        },
      ],
);

/** What is to be sent: readings by parameter number, and the active codes. */
interface Telegram {
  readonly readings: ReadonlyMap<number, ParameterContent>;
  readonly codes: readonly ActiveCode[];
}

/** Makes frames of what the controller knows, each message at its usual rate. */
export function createBroadcast() {
  let dueS = new Map<number, number>();
  /** Packets of a long message that still have to be sent, one a step. */
  let packets: CanFrame[] = [];
  const due = (pgn: number, timeS: number, repeatS: number): boolean => {
    const at = dueS.get(pgn) ?? timeS;
    // A twentieth of a millisecond of grace: sums of steps are never exactly whole.
    if (timeS < at - 5e-5) return false;
    dueS.set(pgn, at + repeatS);
    return true;
  };
  return {
    /** The frames that are due at this moment; times have to rise, a step at a time. */
    framesAt(timeS: number, telegram: () => Telegram): CanFrame[] {
      const now = schedule.filter(({ pgn, repeatS }) => due(pgn, timeS, repeatS));
      const diagnostics = due(DM1_PGN, timeS, DM1_REPEAT_S);
      const [packet, ...later] = packets;
      packets = later;
      const waiting = packet ? [{ ...packet, timeS }] : [];
      if (now.length === 0 && !diagnostics) return waiting;
      const { readings, codes } = telegram();
      const [first, ...rest] = diagnostics ? diagnosticFrames(timeS, codes) : [];
      packets = [...packets, ...rest];
      return [
        ...waiting,
        ...now.flatMap(message => messageFrame(timeS, message, readings)),
        ...(first ? [first] : []),
      ];
    },
    /** The controller has gone to sleep: when it wakes, everything is due at once. */
    sleep(): void {
      dueS = new Map();
      packets = [];
    },
  };
}

function messageFrame(
  timeS: number,
  { pgn, priority, parameters }: Scheduled,
  readings: ReadonlyMap<number, ParameterContent>,
): CanFrame[] {
  if (!parameters.some(({ spn }) => readings.has(spn))) return [];
  const data = new Uint8Array(MAX_DATA_BYTES).fill(0xff);
  for (const parameter of parameters) {
    const content = readings.get(parameter.spn);
    if (content !== undefined) writeParameter(parameter, showable(parameter, content), data);
  }
  return [j1939Frame(timeS, idOf(pgn, priority), data)];
}

/** A sensor at the end of its range stays there; what is no number is an error. */
function showable(parameter: ParameterDefinition, content: ParameterContent): ParameterContent {
  if (typeof content !== 'number') return content;
  if (!Number.isFinite(content)) return 'error';
  const { min, max } = rangeOf(parameter);
  return Math.min(max, Math.max(min, content));
}

const idOf = (pgn: number, priority: number) =>
  encodeCanId({ priority, pgn, source: ENGINE_ADDRESS, destination: GLOBAL_ADDRESS });

function diagnosticFrames(timeS: number, codes: readonly ActiveCode[]): CanFrame[] {
  const lamp = (name: ActiveCode['lamp']): LampState => ({
    status: codes.some(code => code.lamp === name) ? 'on' : 'off',
    flash: 'none',
  });
  const dark: LampState = { status: 'off', flash: 'none' };
  const lamps: Lamps = {
    malfunction: dark,
    redStop: lamp('redStop'),
    amberWarning: lamp('amberWarning'),
    protect: dark,
  };
  const data = formatDiagnostics(
    lamps,
    codes.map(({ spn, fmi }) => ({ spn, fmi, occurrences: 1 })),
  );
  if (data.length <= MAX_DATA_BYTES) return [j1939Frame(timeS, idOf(DM1_PGN, 6), data)];
  return announceToAll(timeS, ENGINE_ADDRESS, DM1_PGN, data);
}
