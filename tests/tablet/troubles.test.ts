import { expect, it, vi } from 'vitest';
import { Troubles } from '../../src/tablet/remote/troubles.ts';

function kept() {
  const due: { readonly ms: number; readonly act: () => void }[] = [];
  const changed = vi.fn();
  const troubles = new Troubles(changed, (ms, act) => due.push({ ms, act }));
  return { troubles, due, changed };
}

it('keeps the last five troubles, one that comes again as the last', () => {
  const { troubles, changed } = kept();
  for (const sentence of ['1', '2', '3', '4', '5', '6', '3']) troubles.add(sentence);
  expect(troubles.sentences).toEqual(['2', '4', '5', '6', '3']);
  expect(changed).toHaveBeenCalledTimes(7);
});

it('shows a refusal for eight seconds', () => {
  const { troubles, due } = kept();
  troubles.refuse('Not now.');
  expect(troubles.refusal).toBe('Not now.');
  expect(due[0]?.ms).toBe(8000);
  due[0]?.act();
  expect(troubles.refusal).toBe('');
});

it('does not take a later refusal away with an earlier one', () => {
  const { troubles, due } = kept();
  troubles.refuse('Not now.');
  troubles.refuse('Not yours.');
  due[0]?.act();
  expect(troubles.refusal).toBe('Not yours.');
  due[1]?.act();
  expect(troubles.refusal).toBe('');
});
