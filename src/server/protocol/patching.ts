import type { View } from '../../session/view.ts';
import type { BayPatch, BayState } from './bay.ts';

type ViewPatch = BayPatch['view'];
type Line = View['log'][number];

const same = (a: unknown, b: unknown) => a === b || JSON.stringify(a) === JSON.stringify(b);

/** The members of `next` that differ from those of `before`. */
function changed<T extends object>(before: T, next: T): Partial<T> {
  const found: Partial<T> = {};
  for (const key of Object.keys(next) as (keyof T)[])
    if (next[key] !== undefined && !same(before[key], next[key])) found[key] = next[key];
  return found;
}

/** How many lines of the end of `before` are the beginning of `next`. */
function kept(before: readonly Line[], next: readonly Line[]): number {
  for (let count = Math.min(before.length, next.length); count > 0; count -= 1)
    if (same(before.slice(-count), next.slice(0, count))) return count;
  return 0;
}

function viewPatch(before: BayState['view'], next: BayState['view']): ViewPatch {
  if (next === null) return before === null ? { kind: 'same' } : { kind: 'none' };
  if (before === null) return { kind: 'whole', view: next };
  const { log: logBefore, ...restBefore } = before;
  const { log, ...rest } = next;
  const set = changed(restBefore, rest);
  const gone = Object.keys(restBefore).filter(key => Reflect.get(rest, key) === undefined);
  const keep = kept(logBefore, log);
  const moved = keep !== log.length || keep !== logBefore.length;
  if (Object.keys(set).length === 0 && gone.length === 0 && !moved) return { kind: 'same' };
  return { kind: 'part', set, gone, log: moved ? { keep, append: log.slice(keep) } : null };
}

/** What changed from one state to the next; null when nothing did. */
export function patchBetween(before: BayState, next: BayState): BayPatch | null {
  const { view: viewBefore, ...bayBefore } = before;
  const { view: viewNext, ...bayNext } = next;
  const patch: BayPatch = { bay: changed(bayBefore, bayNext), view: viewPatch(viewBefore, viewNext) };
  return Object.keys(patch.bay).length === 0 && patch.view.kind === 'same' ? null : patch;
}

function patchedView(view: BayState['view'], patch: ViewPatch): BayState['view'] {
  switch (patch.kind) {
    case 'same':
      return view;
    case 'none':
      return null;
    case 'whole':
      return patch.view;
    case 'part': {
      if (view === null) return null;
      const log = patch.log
        ? [...(patch.log.keep > 0 ? view.log.slice(-patch.log.keep) : []), ...patch.log.append]
        : view.log;
      const left = Object.fromEntries(Object.entries(view).filter(([key]) => !patch.gone.includes(key)));
      return { ...left, ...patch.set, log } as View;
    }
  }
}

/** The state after a patch; `patchBetween(before, next)` applied to `before` gives `next`. */
export const applyPatch = (state: BayState, patch: BayPatch): BayState =>
  Object.assign({}, state, patch.bay, { view: patchedView(state.view, patch.view) });
