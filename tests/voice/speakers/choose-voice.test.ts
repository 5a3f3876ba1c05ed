import { describe, expect, it } from 'vitest';
import { VoiceError } from '../../../src/voice/errors.ts';
import { thisComputer } from '../../../src/voice/programs.ts';
import { chooseVoice } from '../../../src/voice/speakers/choose-voice.ts';
import { SystemVoice } from '../../../src/voice/speakers/system-voice.ts';

describe('the voice of a French session', () => {
  it("is the computer's own, and that is said", async () => {
    // Debian package espeak-ng.
    const { synthesizer, soundless, remark } = chooseVoice('fr');
    expect(soundless).toBe(false);
    expect(remark).toBe("There is no embedded French voice; this computer's espeak-ng speaks.");
    const { samples, sampleRateHz } = await synthesizer.synthesize('Coupez le contact.');
    expect(samples.length / sampleRateHz).toBeGreaterThan(0.5);
    expect(Math.max(...samples)).toBeGreaterThan(0.1);
  });

  it('is silence where there is none, as long as people read, and that is said', async () => {
    const { synthesizer, soundless, remark } = chooseVoice('fr', { platform: 'linux', env: { PATH: '' } });
    expect(soundless).toBe(true);
    expect(remark).toMatch(/^There is no embedded French voice, and this computer has none .*\.$/);
    const { samples, sampleRateHz } = await synthesizer.synthesize('Coupez le contact maintenant.');
    expect(samples.every(sample => sample === 0)).toBe(true);
    expect(samples.length / sampleRateHz).toBeGreaterThan(1);
  });

  it.each([
    ['is missing', 'no-such-synthesizer'],
    ['fails', 'false'],
    ['writes nothing', 'true'],
  ])('fails in one sentence when its program %s', async (_, program) => {
    const voice = new SystemVoice({ program, args: () => [] }, thisComputer.env);
    const fault: unknown = await voice.synthesize('Bonjour.').catch((cause: unknown) => cause);
    expect(fault).toBeInstanceOf(VoiceError);
    expect(String(fault)).toMatch(/The speech synthesizer failed \(.*\); read the sentence on the screen\.$/);
  });
});
