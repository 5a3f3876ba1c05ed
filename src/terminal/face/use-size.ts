import { useStdout } from 'ink';
import { useEffect, useState } from 'react';
import type { Size } from './screen.ts';

const UNKNOWN: Size = { columns: 80, rows: 24 };

/** How large the terminal is now. One that does not tell counts as 80 by 24. */
export function useSize(): Size {
  const { stdout } = useStdout();
  const [size, setSize] = useState(() => sizeOf(stdout));
  useEffect(() => {
    const resized = () => setSize(sizeOf(stdout));
    stdout.on('resize', resized);
    resized();
    return () => {
      stdout.off('resize', resized);
    };
  }, [stdout]);
  return size;
}

function sizeOf({ columns, rows }: { columns?: number; rows?: number }): Size {
  return { columns: columns || UNKNOWN.columns, rows: rows || UNKNOWN.rows };
}
