/**
 * The stream ink draws to: the terminal's, except that frames go to `paint` and that it says it is no
 * terminal, so that ink sends no control codes of its own.
 */
export function frameStream(stdout: NodeJS.WriteStream, paint: (frame: string) => void): NodeJS.WriteStream {
  const write = (frame: string, written?: () => void): boolean => {
    if (frame !== '') paint(frame);
    if (written) setImmediate(written);
    return true;
  };
  return new Proxy(stdout, {
    get(target, property) {
      if (property === 'write') return write;
      if (property === 'isTTY') return false;
      const value: unknown = Reflect.get(target, property);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
