import type { Line } from './connection.ts';

/** A line to the laptop that this page came from, as a browser opens it. */
export function webSocketLine(): Line {
  const socket = new WebSocket(`${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}/ws`);
  return {
    send: text => socket.send(text),
    close: () => socket.close(),
    onOpen: handler => socket.addEventListener('open', handler),
    onText: handler =>
      socket.addEventListener('message', ({ data }) => {
        if (typeof data === 'string') handler(data);
      }),
    onClosed: handler => socket.addEventListener('close', handler),
  };
}
