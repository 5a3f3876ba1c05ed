/**
 * The terminal face on a few views by hand. Typing the name of a view shows it; Escape shows the stopped one;
 * typing "crash" throws where nobody catches; Ctrl-C twice leaves.
 */
import { showFace } from '../../../src/terminal/face/show.ts';
import { faceWords } from '../../../src/terminal/face/words/index.ts';
import { ShownViews } from '../face/shown.ts';
import { everyView } from '../face/views.ts';

const viewer = new ShownViews(everyView.filling);
const byName = new Map(Object.entries(everyView));

const face = showFace(
  viewer,
  faceWords.en,
  {
    onType(text) {
      if (text === 'crash') throw new Error('thrown on purpose');
      const view = byName.get(text);
      if (view) viewer.show(view);
    },
    onStop: () => viewer.show(everyView.stopped),
    onLeave: () => face.close(),
    onKeysEnded: () => face.close(),
  },
  process,
);
await face.done;
process.stdout.write('The face is closed.\n');
