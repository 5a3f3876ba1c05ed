import { ofKind, type Recorded } from '../../record/vocabulary/index.ts';
import type { EarStory } from '../model.ts';

/** What happened to the engine by ear, in order of time; its speeds are among the readings. */
export const earOf = (entries: readonly Recorded[]): EarStory[] =>
  entries.filter(ofKind('engineHeard')).flatMap(({ timeMs, data }): EarStory[] => {
    const { happened, rpm, amplitudeRpm, periodS, fromHz, toHz, db, microphone } = data;
    if (happened == null) return [];
    return [
      {
        timeMs,
        happened,
        ...(rpm == null ? {} : { rpm }),
        ...(amplitudeRpm == null || periodS == null ? {} : { hunting: { amplitudeRpm, periodS } }),
        ...(fromHz == null || toHz == null || db == null ? {} : { change: { fromHz, toHz, db } }),
        ...(microphone == null ? {} : { microphone }),
      },
    ];
  });
