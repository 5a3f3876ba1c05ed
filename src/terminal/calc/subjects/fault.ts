import { readFaultCode } from '../../../engineering/fault-codes.ts';
import { answer, said, subject } from '../subject.ts';

export const fault = subject({
  name: 'fault',
  summary: 'what a J1939 fault code means',
  numbers: {},
  words: { fault: { flag: 'code', help: 'SPN and FMI with something between them, such as 157/18' } },
  answer: ({ words }) =>
    answer(readFaultCode(words('fault') ?? ''), ({ spn, fmi }) => [
      said('SPN', String(spn)),
      said('FMI', `${fmi.number}, ${fmi.text}`),
      ...(fmi.severity === undefined ? [] : [said('severity', fmi.severity)]),
      said(
        'start-up',
        'blocks, unless the engine profile has a rule for it or the supervisor accepts it with a reason',
      ),
    ]),
});
