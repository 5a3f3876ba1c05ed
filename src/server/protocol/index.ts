/**
 * Every message between a face and the server. Imports nothing of Node, so that a page can use it.
 *
 * A face pairs once (`pairing.ts`), opens `wss://<host>/ws`, sends `hello`, and gets `welcome` and then a
 * snapshot, or the frames it missed. Frames are numbered without a gap; a face that sees a gap sends `hello`
 * on a new connection. A command is sent again with the same id until its ack or its error has come.
 */
export * from './bay.ts';
export * from './board.ts';
export * from './client-messages.ts';
export * from './clock-offset.ts';
export * from './commands.ts';
export * from './common.ts';
export * from './ear-messages.ts';
export * from './http.ts';
export * from './pairing.ts';
export * from './parse.ts';
export * from './patching.ts';
export * from './server-messages.ts';
export * from './view.ts';
