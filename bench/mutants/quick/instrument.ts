import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { commonTokens } from '@stryker-mutator/api/plugin';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { createInjector } from 'typed-inject';

const silent = {
  trace() {},
  debug() {},
  info() {},
  warn() {},
  error() {},
  fatal() {},
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
};

/** Files with all the mutants of Stryker in them, and the mutants. */
export async function instrument(files: readonly string[]) {
  const instrumenter = createInjector()
    .provideValue(commonTokens.logger, silent)
    .provideValue(commonTokens.getLogger, () => silent)
    .injectFunction(createInstrumenter);
  const { files: made, mutants } = await instrumenter.instrument(
    files.map(name => ({ name: resolve(name), content: readFileSync(name, 'utf8'), mutate: true })),
    { plugins: null, excludedMutations: [], ignorers: [] },
  );
  const texts = new Map(files.map((name, index) => [name, made[index]?.content ?? '']));
  return { texts, mutants };
}
