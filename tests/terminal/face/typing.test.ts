import { describe, expect, it } from 'vitest';
import { keysIn } from '../../../src/terminal/face/keys.ts';
import { type Act, nothingTyped, press, type Typing } from '../../../src/terminal/face/typing.ts';

function type(chunk: string, from: Typing = nothingTyped): { typing: Typing; acts: Act[] } {
  let typing = from;
  const acts: Act[] = [];
  for (const key of keysIn(chunk)) {
    const pressed = press(typing, key);
    typing = pressed.typing;
    if (pressed.act) acts.push(pressed.act);
  }
  return { typing, acts };
}

const UP = '\x1b[A';
const DOWN = '\x1b[B';

describe('the typed line', () => {
  it('is sent with Enter, without blanks around it, and is empty then', () => {
    const { typing, acts } = type('  all good \r');
    expect(acts).toEqual([{ kind: 'type', text: 'all good' }]);
    expect(typing.typed).toBe('');
  });

  it('is edited with Backspace, a whole character at a time', () => {
    expect(type('34👍\x7f\x7f5').typing.typed).toBe('35');
    expect(type('\x7f').typing.typed).toBe('');
  });

  it('is not sent when there is nothing in it', () => {
    expect(type('   \r\r').acts).toEqual([]);
  });

  it('comes back with the Up arrow, older ones with each press, and goes again with Down', () => {
    const { typing } = type('ready\rfired\r');
    expect(type(UP, typing).typing.typed).toBe('fired');
    expect(type(UP + UP + UP, typing).typing.typed).toBe('ready');
    expect(type(UP + UP + DOWN, typing).typing.typed).toBe('fired');
    expect(type(UP + DOWN, typing).typing.typed).toBe('');
    expect(type(UP).typing.typed).toBe('');
  });

  it('is dropped by Escape, which stops whatever is typed', () => {
    const { typing, acts } = type('not ye\x1b');
    expect(acts).toEqual([{ kind: 'stop' }]);
    expect(typing.typed).toBe('');
  });

  it('has a longest length, so that a key held down does no harm', () => {
    expect(type('x'.repeat(5000)).typing.typed.length).toBe(500);
  });
});

describe('leaving with Ctrl-C', () => {
  it('asks after the first and leaves after the second', () => {
    expect(type('\x03').acts).toEqual([]);
    expect(type('\x03').typing.leaving).toBe(true);
    expect(type('\x03\x03').acts).toEqual([{ kind: 'leave' }]);
  });

  it('is as it says by Ctrl-C only: Ctrl-D asks too, and stays', () => {
    expect(type('\x03\x04').acts).toEqual([]);
    expect(type('\x03\x04').typing.leaving).toBe(false);
    expect(type('\x04').typing.leaving).toBe(true);
    expect(type('\x04\x04').acts).toEqual([]);
    expect(type('\x04\x03').acts).toEqual([{ kind: 'leave' }]);
  });

  it('is forgotten when another key comes between', () => {
    const { typing, acts } = type('\x03x\x03');
    expect(acts).toEqual([]);
    expect(typing.leaving).toBe(true);
  });

  it('does not keep Escape from stopping', () => {
    expect(type('\x03\x1b').acts).toEqual([{ kind: 'stop' }]);
  });
});
