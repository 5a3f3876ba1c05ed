import { useState } from 'react';
import type { View } from '../../../session/view.ts';
import { words } from '../../words/index.ts';
import type { Touch } from '../use-touch.ts';

const LONGEST = 8;
const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

const withMinus = (text: string) => (text.startsWith('-') ? text.slice(1) : `-${text}`);
const withPoint = (text: string) => (text.includes('.') ? text : `${text === '' ? '0' : text}.`);

/** Keys for a reading, large enough for a glove. The session judges what is sent. */
export function NumberPad({
  number,
  touch,
}: {
  readonly number: NonNullable<View['number']>;
  readonly touch: Touch;
}) {
  const [typed, setTyped] = useState('');
  const add = (digit: string) => setTyped(before => (before.length < LONGEST ? before + digit : before));
  const send = () => {
    if (!/\d/.test(typed)) return;
    touch.say(typed.replace(/\.$/, ''));
    setTyped('');
  };
  const { name, unit, min, max } = number;
  return (
    <fieldset className="pad" aria-label={name}>
      <p className="typed">
        <output aria-label={name}>{typed === '' ? '–' : typed.replace('-', '−')}</output>{' '}
        <span className="quiet">
          {unit} ({words.number.range} {String(min).replace('-', '−')} {words.number.to}{' '}
          {String(max).replace('-', '−')})
        </span>
      </p>
      <div className="keys">
        {digits.map(digit => (
          <button type="button" key={digit} onClick={() => add(digit)}>
            {digit}
          </button>
        ))}
        <button
          type="button"
          aria-label={min < 0 ? words.number.minus : words.number.point}
          onClick={() => setTyped(min < 0 ? withMinus : withPoint)}
        >
          {min < 0 ? '±' : '.'}
        </button>
        <button type="button" className="zero" onClick={() => add('0')}>
          0
        </button>
        <button
          type="button"
          className="delete"
          aria-label={words.number.delete}
          onClick={() => setTyped(before => before.slice(0, -1))}
        >
          ⌫
        </button>
        <button
          type="button"
          className="send first"
          aria-disabled={!/\d/.test(typed) || !touch.ready}
          onClick={send}
        >
          {words.number.send}
        </button>
      </div>
    </fieldset>
  );
}
