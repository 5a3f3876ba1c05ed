import { busQuantities } from '../../profile/schema.ts';
import { idOf, WAIT_LAMP } from '../names.ts';
import type { Question, Value } from '../question.ts';
import { always, assumed, electric, withHeater } from './makers.ts';

/** Two names that come to the same short one. */
function twice(value: Value): string | null {
  const names = Array.isArray(value) ? value.filter(each => typeof each === 'string') : [];
  const same = names.find((name, index) => names.findIndex(other => idOf(other) === idOf(name)) !== index);
  return same === undefined ? null : `"${same}" stands there twice; name each thing once.`;
}

function notOnBus(value: Value): string | null {
  const names = Array.isArray(value) ? value.filter(each => typeof each === 'string') : [];
  const unknown = names.find(name => !busQuantities.some(quantity => quantity === name));
  return unknown === undefined
    ? null
    : `"${unknown}" is nothing that a bus is read for; allowed: ${busQuantities.join(', ')}.`;
}

/** What is gone through by name, and the bus. */
export const namedQuestions: readonly Question[] = [
  {
    kind: 'names',
    id: 'sensors',
    usual: 'seen',
    ask: 'Sensors, with commas between',
    fields: ['sensors'],
    tier: 'manual',
    propose: draft =>
      assumed([
        'oil pressure',
        'coolant temperature',
        ...(electric(draft) ? ['intake temperature', 'rail pressure', 'crank speed', 'cam position'] : []),
        ...(draft.turbo === true && electric(draft) ? ['boost pressure'] : []),
      ]),
    check: twice,
  },
  {
    kind: 'names',
    id: 'lamps',
    usual: 'seen',
    ask: 'Lamps of the panel, with commas between',
    fields: ['lamps'],
    tier: 'manual',
    propose: draft =>
      assumed([
        ...(electric(draft) ? ['red warning', 'amber warning'] : []),
        'oil pressure',
        'charging',
        ...(withHeater(draft) ? [WAIT_LAMP] : []),
      ]),
    check: (value, draft) => {
      const same = twice(value);
      if (same !== null) return same;
      const ids = Array.isArray(value) ? value.map(each => idOf(String(each))) : [];
      return withHeater(draft) && !ids.includes(idOf(WAIT_LAMP))
        ? `The heater is waited for by a lamp; name it "${WAIT_LAMP}" among them.`
        : null;
    },
  },
  {
    kind: 'names',
    id: 'retorque',
    ask: 'What is torqued again when cold, with commas between',
    fields: ['retorque'],
    tier: 'manual',
    propose: draft =>
      assumed([
        'exhaust manifold',
        ...(draft.turbo === true ? ['turbo clamps'] : []),
        'coolant hose clamps',
        'oil drain plug',
      ]),
    check: twice,
  },
  {
    kind: 'yesNo',
    id: 'bus',
    usual: 'seen',
    ask: 'A J1939 bus that may be read?',
    fields: ['bus'],
    tier: 'manual',
    propose: always(false),
  },
  {
    kind: 'names',
    id: 'busReadings',
    ask: 'What it gives, with commas between',
    fields: ['bus'],
    tier: 'rest',
    when: draft => draft.bus === true,
    propose: always([...busQuantities]),
    check: value => twice(value) ?? notOnBus(value),
    why: 'it need not be spoken',
    where: 'a log of the bus: "engine from-bus" reads it out',
  },
  {
    kind: 'number',
    id: 'busAddress',
    ask: "Address of the engine's controller",
    measure: 'count',
    min: 0,
    max: 253,
    whole: true,
    fields: ['bus'],
    tier: 'rest',
    when: draft => draft.bus === true,
    propose: always(0),
    why: 'only what the engine itself sends is acted on',
    where: 'a log of the bus: "engine from-bus" reads it out',
  },
];
