import { describe, expect, it } from 'vitest';
import { BayWatch, type HearingReport, helpedBelowDb, helpedUpToDb } from '../../src/session/bay-watch.ts';
import type { UtteranceLevel } from '../../src/voice/ports.ts';

function watch() {
  const reports: HearingReport[] = [];
  const bay = new BayWatch(report => reports.push(report));
  let nth = 0;
  const level = { levelDbfs: -30, clipping: false, speech: true, noiseDbfs: -45 };
  return {
    bay,
    findings: () => reports.map(({ finding }) => finding),
    reports,
    /** An utterance from its beginning to its end. */
    say(aboveNoiseDb: number, { clipping = false, speechDbfs = -25, toolSpeaks = false } = {}) {
      nth += 1;
      const utterance: UtteranceLevel = { nth, speechDbfs, aboveNoiseDb };
      bay.take({ ...level, clipping }, toolSpeaks);
      bay.take({ ...level, speech: false, utterance }, false);
      // As it comes from another thread or device: told again, but not the same object.
      bay.take({ ...level, speech: false, utterance: { ...utterance } }, false);
    },
  };
}

describe('the check of the bay', () => {
  it('is done once, with the third utterance, and put on the record', () => {
    const { say, reports, bay } = watch();
    for (const above of [22, 18, 20, 21]) say(above);
    expect(reports).toEqual([{ finding: 'bayChecked', noiseDbfs: -45, aboveNoiseDb: 20 }]);
    expect(bay.voiceTrusted).toBe(true);
  });

  it('trusts no voice that hardly stands above the noise, until it clearly does again', () => {
    const { say, findings, bay } = watch();
    for (const above of [3, 2, 4]) say(above);
    expect(bay.voiceTrusted).toBe(false);
    for (const above of [6, 7, 6]) say(above);
    expect(bay.voiceTrusted).toBe(false);
    for (const above of [12, 14]) say(above);
    expect(bay.voiceTrusted).toBe(true);
    expect(findings()).toEqual(['bayTooNoisy', 'bayQuietEnough']);
  });

  it('helps a voice that stands not far enough above the noise, until it clearly does', () => {
    const { say, findings, bay } = watch();
    for (const above of [20, 20, 20]) say(above);
    expect(bay.voiceHelped).toBe(false);
    for (const above of [helpedBelowDb - 0.1, helpedBelowDb - 0.1]) say(above);
    expect(bay.voiceHelped).toBe(true);
    for (const above of [helpedUpToDb - 0.1, helpedUpToDb - 0.1, helpedUpToDb - 0.1]) say(above);
    expect(bay.voiceHelped).toBe(true);
    for (const above of [helpedUpToDb, helpedUpToDb]) say(above);
    expect(bay.voiceHelped).toBe(false);
    expect(findings()).toEqual(['bayChecked', 'bayLoud', 'bayLessLoud']);
    expect(bay.voiceTrusted).toBe(true);
  });

  it('does not explain how to speak to whoever has to answer by keys', () => {
    const { say, findings } = watch();
    for (const above of [20, 20, 20, 1, 1, 1]) say(above);
    expect(findings()).toEqual(['bayChecked', 'bayTooNoisy']);
  });

  it('is not changed by one cough or one shout', () => {
    const { say, findings } = watch();
    for (const above of [20, 20, 20, 1, 20, 20]) say(above);
    expect(findings()).toEqual(['bayChecked']);
  });

  it('takes a figure that is no number for no reason to trust', () => {
    const { say, findings, bay } = watch();
    for (let i = 0; i < 3; i++) say(Number.NaN);
    expect(bay.voiceTrusted).toBe(false);
    expect(findings()).toEqual(['bayTooNoisy']);
  });
});

it('the voice of the tool itself, heard by the microphone, judges nobody', () => {
  const { say, findings } = watch();
  for (let i = 0; i < 4; i++) say(1, { toolSpeaks: true, speechDbfs: -60, clipping: true });
  expect(findings()).toEqual([]);
});

describe('a voice', () => {
  it('that clips twice in a row is told to move the microphone away, once', () => {
    const { say, findings } = watch();
    for (const clipping of [true, false, true, true, true]) say(20, { clipping });
    expect(findings().filter(finding => finding === 'voiceTooLoud')).toHaveLength(1);
  });

  it('that is very faint is told to move it nearer, and again only after it was not', () => {
    const { say, findings } = watch();
    for (const speechDbfs of [-55, -56, -30, -55]) say(20, { speechDbfs });
    expect(findings().filter(finding => finding === 'voiceTooFaint')).toHaveLength(2);
  });
});
