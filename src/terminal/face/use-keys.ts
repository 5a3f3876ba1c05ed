import { useStdin } from 'ink';
import { useEffect } from 'react';
import { type Key, keysIn } from './keys.ts';

/**
 * Every key pressed, in its order. Reads what the terminal sends by itself and not through ink's `useInput`,
 * which takes Escape and a key pressed in haste after it for one unknown key.
 */
export function useKeys(onKey: (key: Key) => void): void {
  const { stdin, setRawMode } = useStdin();
  useEffect(() => {
    setRawMode(true);
    return () => setRawMode(false);
  }, [setRawMode]);
  useEffect(() => {
    const take = (chunk: Buffer | string) => {
      for (const key of keysIn(String(chunk))) onKey(key);
    };
    stdin.on('data', take);
    return () => {
      stdin.off('data', take);
    };
  }, [stdin, onKey]);
}
