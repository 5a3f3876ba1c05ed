import createModule from 'soundswallower';
import { createEar } from '../../voice/recognizers/soundswallower/ear.ts';
import { serveEar } from './serve-ear.ts';

serveEar(async model => {
  const module = await createModule({
    // What goes wrong is said in one sentence by whoever catches it.
    print: () => {},
    printErr: () => {},
  });
  return createEar({ module, model });
});
