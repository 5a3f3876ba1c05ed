import type { Session } from '../session/session.ts';
import { createTypedRecognizer } from '../voice/recognizers/typed.ts';
import { seeded } from './random.ts';
import type { Rehearsal, RehearsalOptions } from './rehearsal.ts';
import { createTrainee } from './trainee/trainee.ts';

/**
 * Lets a virtual technician answer the session from what the engine shows; the engine has to be running.
 * @returns what makes the technician fall silent for good
 */
export function answerByItself(
  session: Session,
  rehearsal: Rehearsal,
  options: RehearsalOptions,
): () => void {
  const { profile, language, units, clock } = session.parts;
  const keys = createTypedRecognizer();
  session.attach(keys, 'keys');
  const trainee = createTrainee({
    profile,
    language,
    units,
    ambientC: options.ambientC,
    random: seeded(options.seed, 'trainee'),
    say: text => keys.type(text),
  });
  let listening = true;
  rehearsal.watch(() => {
    // Nobody talks into an answer that is still being written down.
    if (!listening) return;
    trainee.look(session.moment, session.speaking, clock.nowMs(), rehearsal.gauges);
    listening = false;
    void session.settled().then(() => {
      listening = true;
    });
  });
  return () => keys.close();
}
