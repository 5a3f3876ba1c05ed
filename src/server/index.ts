/** The door of the server for those who start it; what pages use is in `protocol/`. */
export type { Usual } from './bay/starter.ts';
export { askDesk, DeskError, type PairedDevice } from './desk.ts';
export { stopAllOnFailure } from './last-resort.ts';
export { type KeptModel, keepModel, listModels, removeModel } from './models/model-folder.ts';
export type { OpenCode } from './pairing/code-desk.ts';
export { type RunningServer, ServeError, type ServeOptions, startServer } from './serve.ts';
