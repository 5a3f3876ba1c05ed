/** The door of the server for those who start it; what pages use is in `protocol/`. */
export type { Usual } from './bay/starter.ts';
export { type KeptModel, keepModel, listModels, removeModel } from './models/model-folder.ts';
export type { OpenCode } from './pairing/code-desk.ts';
export {
  type PairedDevice,
  type RunningServer,
  ServeError,
  type ServeOptions,
  startServer,
} from './serve.ts';
