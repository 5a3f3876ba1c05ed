/** A synthesizer's command: it reads the text and writes a WAV file, at whatever rate it likes. */
export interface VoiceCommand {
  readonly program: string;
  readonly args: readonly string[];
  /** How the text is handed over. */
  readonly textBy: 'argument' | 'input';
}

/** A voice that test speech is made with. */
export interface Voice {
  readonly name: string;
  readonly engine: 'flite' | 'festival' | 'espeak-ng';
  /**
   * How the sound is made: from recorded speech (units or statistics of it), or by rule. Rule-made voices are
   * heard badly even when clean: results are reported apart, and nothing is tuned to them.
   */
  readonly made: 'fromRecordings' | 'byRule';
  /** Debian packages that bring the program and the voice. */
  readonly packages: readonly string[];
  command(outputPath: string): VoiceCommand;
}

const flite = (voice: string): Voice => ({
  name: `flite-${voice}`,
  engine: 'flite',
  made: 'fromRecordings',
  packages: ['flite'],
  command: outputPath => ({
    program: 'flite',
    args: ['-voice', voice, '-o', outputPath, '-t'],
    textBy: 'argument',
  }),
});

const festival = (name: string, voice: string, voicePackage: string): Voice => ({
  name: `festival-${name}`,
  engine: 'festival',
  made: 'fromRecordings',
  packages: ['festival', voicePackage],
  command: outputPath => ({
    program: 'text2wave',
    args: ['-eval', `(voice_${voice})`, '-o', outputPath],
    textBy: 'input',
  }),
});

const espeak = (name: string, voice: string): Voice => ({
  name: `espeak-${name}`,
  engine: 'espeak-ng',
  made: 'byRule',
  packages: ['espeak-ng'],
  command: outputPath => ({
    program: 'espeak-ng',
    args: ['-v', voice, '-w', outputPath, '--'],
    textBy: 'argument',
  }),
});

/** Every voice English test speech is made with. */
export const VOICES: readonly Voice[] = [
  flite('slt'),
  flite('awb'),
  flite('rms'),
  flite('kal16'),
  festival('slt-hts', 'cmu_us_slt_arctic_hts', 'festvox-us-slt-hts'),
  festival('kal', 'kal_diphone', 'festvox-kallpc16k'),
  festival('ked', 'ked_diphone', 'festvox-kdlpc16k'),
  espeak('en-us', 'en-us'),
  espeak('en-gb', 'en-gb'),
  espeak('en-us-female', 'en-us+f3'),
];

/**
 * Voices of French test speech, made by rule alone: Debian's free archive has no other (the MBROLA and
 * Pico voices are not in it).
 */
export const FRENCH_VOICES: readonly Voice[] = [
  espeak('fr', 'fr'),
  espeak('fr-female', 'fr+f3'),
  espeak('fr-be', 'fr-be'),
];
