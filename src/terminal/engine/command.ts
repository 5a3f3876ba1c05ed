import type { Command } from 'commander';
import { registerCheck, registerCompare, registerList, registerShow } from './looking.ts';
import { registerCopy, registerFromBus, registerNew, registerSchema } from './making.ts';
import { registerAccept, registerSign } from './supervising.ts';

/** Adds `engine`: profiles of engines made, shown, checked, compared, copied, listed, accepted and signed. */
export function registerEngine(program: Command): void {
  const engine = program.command('engine').description('make and look after the profiles of engines');
  for (const register of [
    registerNew,
    registerShow,
    registerCheck,
    registerCompare,
    registerCopy,
    registerList,
    registerAccept,
    registerFromBus,
    registerSchema,
    registerSign,
  ])
    register(engine);
}
