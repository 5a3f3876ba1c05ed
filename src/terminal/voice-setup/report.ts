import { type SpeakerProfile, shipped, type Tally } from '../../voice/speaker-profile/profile.ts';
import { gainFor, type Prompt, type Trial } from '../../voice/speaker-profile/trial.ts';

const counted = ({ right, unclear, wrong }: Tally) => `${right} right, ${unclear} unclear, ${wrong} wrong`;

/** How each prompt was heard with nothing changed. */
export const trialLines = (prompts: readonly Prompt[], trials: readonly Trial[]): readonly string[] =>
  prompts.map(({ text }, i) => {
    const { outcome, certainty } = trials[i] ?? { outcome: 'unclear', certainty: 0 };
    return `  ${outcome.padEnd(8)} ${certainty === 0 ? '    ' : certainty.toFixed(2)}  ${text}`;
  });

/** What came of it, in sentences. */
export function summary({ adaptation, heldOut, levels }: SpeakerProfile): readonly string[] {
  const gain = gainFor(levels.speechDbfs);
  const changes = [
    ...(adaptation.gainDb > 0 ? [`louder by ${adaptation.gainDb} dB`] : []),
    ...(adaptation.trailingSilenceMs > shipped.trailingSilenceMs
      ? ['waits longer for the end of a reply']
      : []),
    ...(adaptation.leastCertainty > shipped.leastCertainty
      ? [`asks again below a certainty of ${adaptation.leastCertainty}`]
      : []),
  ];
  return [
    `Voice ${levels.speechDbfs.toFixed(0)} dBFS, noise ${levels.noiseDbfs.toFixed(0)} dBFS.`,
    ...(levels.clipped > 0
      ? [`The microphone ran out of its range in ${levels.clipped} prompts: move it away, or turn it down.`]
      : gain > 0
        ? [`The microphone is faint: bring it nearer, or turn it up by ${gain} dB.`]
        : []),
    `Held-out prompts before: ${counted(heldOut.before)}. After: ${counted(heldOut.after)}.`,
    changes.length > 0
      ? `Kept: ${changes.join(', ')}.`
      : 'Nothing made it better: the shipped settings stay.',
  ];
}
