import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { decodeWav } from '../../src/voice/audio/wav.ts';
import { concatenate } from '../../src/voice/concatenate.ts';
import type { Pcm } from '../../src/voice/ports.ts';

const rateHz = 16_000;
const asterisk = '/usr/share/asterisk/sounds/en_US_f_Allison';
const asteriskTexts = '/usr/share/doc/asterisk-core-sounds-en/core-sounds-en.txt.gz';
const pocketsphinx = '/usr/share/pocketsphinx/test/data';

/** A recording and the words in it. */
export interface Recording {
  readonly name: string;
  readonly text: string;
  readonly sound: Pcm;
}

/** Low noise, the same each time, so that a listener has a floor to measure against. */
function quiet(ms: number): Float32Array {
  let state = 1;
  return Float32Array.from({ length: (rateHz * ms) / 1000 }, () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return (state / 2_147_483_648 - 0.5) * 0.001;
  });
}

export const padded = (pieces: readonly Float32Array[]): Pcm => ({
  samples: concatenate([quiet(600), ...pieces, quiet(600)]),
  sampleRateHz: rateHz,
});

export function g722(name: string, folder = asterisk): Float32Array {
  const path = `${folder}/${name}.g722`;
  const raw = execFileSync('ffmpeg', [
    '-v',
    'error',
    '-f',
    'g722',
    '-i',
    path,
    '-f',
    'f32le',
    '-ar',
    '16000',
    '-',
  ]);
  return new Float32Array(raw.buffer.slice(raw.byteOffset, raw.byteOffset + raw.length));
}

const words: Readonly<Record<string, string>> = {
  '0': 'zero',
  '1': 'one',
  '2': 'two',
  '3': 'three',
  '4': 'four',
  '5': 'five',
  '6': 'six',
  '7': 'seven',
  '8': 'eight',
  '9': 'nine',
  '10': 'ten',
  '11': 'eleven',
  '12': 'twelve',
  '13': 'thirteen',
  '14': 'fourteen',
  '15': 'fifteen',
  '16': 'sixteen',
  '17': 'seventeen',
  '18': 'eighteen',
  '19': 'nineteen',
  '20': 'twenty',
  '30': 'thirty',
  '40': 'forty',
  '50': 'fifty',
  '60': 'sixty',
  '70': 'seventy',
  '80': 'eighty',
  '90': 'ninety',
  hundred: 'hundred',
  minus: 'minus',
};

/** A number spoken by one woman (Debian asterisk-core-sounds-en-g722), from its separate words. */
export function spokenNumber(...names: readonly string[]): Recording {
  const text = names.map(name => words[name] ?? '').join(' ');
  return { name: names.join(' '), text, sound: padded(names.map(name => g722(`digits/${name}`))) };
}

/** Every single number word that is recorded: 0 to 19 and the tens. */
export const singleNumbers = Object.keys(words).filter(name => /^\d+$/.test(name));

/** Telephone sentences of the same speaker, up to a length, none of which answers anything we ask. */
export function telephoneSentences(most: number): readonly Recording[] {
  const lines = gunzipSync(readFileSync(asteriskTexts)).toString('utf8').split('\n');
  return lines
    .map(line => /^((?:vm|conf|agent|queue)-[\w-]+): (\S.*)$/.exec(line))
    .filter(match => match !== null)
    .map(([, name = '', text = '']) => ({ name, text }))
    .filter(({ name, text }) => existsSync(`${asterisk}/${name}.g722`) && text.split(' ').length <= 12)
    .slice(0, most)
    .map(({ name, text }) => ({ name, text, sound: padded([g722(name)]) }));
}

function raw16(path: string): Float32Array {
  const bytes = readFileSync(path);
  return Float32Array.from({ length: bytes.length >> 1 }, (_, i) => bytes.readInt16LE(2 * i) / 32768);
}

/** Sentences of several men and women (Debian pocketsphinx-testdata), none of which is an answer. */
export function readSentences(): readonly Recording[] {
  const librivox = readFileSync(`${pocketsphinx}/librivox/transcription`, 'utf8');
  const read = [...librivox.matchAll(/<s> (.*?) ?<\/s> \((.*?)\)/g)].map(([, text = '', name = '']) => ({
    name,
    text,
    sound: padded([wav(`${pocketsphinx}/librivox/${name}.wav`)]),
  }));
  const commands = [{ name: 'goforward', text: 'go forward ten meters' }].map(({ name, text }) => ({
    name,
    text,
    sound: padded([raw16(`${pocketsphinx}/${name}.raw`)]),
  }));
  return [...read, ...commands];
}

const wav = (path: string) => decodeWav(readFileSync(path), path).samples;

/** The digits 2 9 3 4 0 of one man (Debian pocketsphinx-testdata, tidigits). */
export const connectedDigits = (): Recording => ({
  name: 'dhd.2934z',
  text: 'two nine three four zero',
  sound: padded([raw16(`${pocketsphinx}/tidigits/dhd.2934z.raw`)]),
});
