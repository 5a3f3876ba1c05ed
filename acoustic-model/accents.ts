import { execFileSync } from 'node:child_process';
import { createWriteStream, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { uniform } from '../audio-fixtures/random.ts';
import { decodeWav } from '../src/voice/audio/wav.ts';
import { readTexts } from './texts-file.ts';

/** English phones as speakers of another language say them, in the phones of Festival's voices of that language. */
const sameEverywhere =
  'B b, D d, F f, G g, K k, L l, M m, N n, P p, R r, S s, T t, V v, Y j, DH d, TH t, NG n g';
const accents = {
  italian:
    'AA a, AE E, AH a, AO O, AW a u, AY a i, CH tS, EH E, ER e r, EY e i, HH, IH i, IY i, JH dZ, OW o u, OY O i, SH S, UH u, UW u, W u, Z z, ZH S',
  czech:
    'AA a:, AE e, AH a, AO o, AW a u, AY a j, CH c~, EH e, ER e r, EY e j, HH h, IH i, IY i:, JH d z~, OW o u, OY o j, SH s~, UH u, UW u:, W v, Z z, ZH z~',
  finnish:
    'AA a, AE e, AH a, AO o, AW a u, AY a i, CH t S, EH e, ER e r, EY e i, HH h, IH i, IY i:, JH d j, OW o u, OY o i, SH S, UH u, UW u:, W v, Z s, ZH S',
} as const;

const voices = [
  { voice: 'lp_diphone', accent: 'italian', silence: '#' },
  { voice: 'pc_diphone', accent: 'italian', silence: '#' },
  { voice: 'czech_dita', accent: 'czech', silence: '#' },
  { voice: 'czech_krb', accent: 'czech', silence: '#' },
  { voice: 'czech_machac', accent: 'czech', silence: '#' },
  { voice: 'czech_ph', accent: 'czech', silence: '#' },
  { voice: 'suo_fi_lj_diphone', accent: 'finnish', silence: '#' },
  { voice: 'hy_fi_mv_diphone', accent: 'finnish', silence: '#' },
] as const;

const [, , folder = '.cache/acoustic-model', each = '700', seed = '31'] = process.argv;
const random = uniform(Number(seed));
const between = (low: number, high: number) => low + (high - low) * random();

function spellingOf(accent: keyof typeof accents): ReadonlyMap<string, readonly string[]> {
  return new Map(
    `${sameEverywhere}, ${accents[accent]}`.split(', ').map(entry => {
      const [phone = '', ...spoken] = entry.split(' ');
      return [phone, spoken];
    }),
  );
}

/** Festival gives up at a pair of phones that a voice lacks: it is begun again behind that sentence. */
function speakAll(begin: string, script: readonly string[]): void {
  for (let from = 0; from < script.length; ) {
    writeFileSync(join(scratch, 'script.scm'), [begin, ...script.slice(from)].join('\n'));
    try {
      execFileSync('festival', ['-b', join(scratch, 'script.scm')], { stdio: 'ignore' });
      return;
    } catch {
      while (existsSync(join(scratch, `${from}.wav`))) from += 1;
      from += 1;
    }
  }
}

/** When each phone ends, as flite writes it: "pau:0.080 s:0.160". */
function segmentsOf(
  phones: string,
  spelling: ReadonlyMap<string, readonly string[]>,
  phoneMs: number,
): string {
  let endMs = phoneMs;
  const ends = phones.split(' ').map(phone => {
    endMs += phoneMs * (spelling.get(phone)?.length ?? 0);
    return `${phone}:${(endMs / 1000).toFixed(3)}`;
  });
  return [`pau:${(phoneMs / 1000).toFixed(3)}`, ...ends].join(' ');
}

const texts = readTexts(folder).filter(({ phones }) => phones.split(' ').length < 40);
const scratch = mkdtempSync(join(tmpdir(), 'acoustic-model-'));
const sound = createWriteStream(`${folder}/accents.s16`);
const index = createWriteStream(`${folder}/accents.jsonl`);
let at = 0;

for (const { voice, accent, silence } of voices) {
  const spelling = spellingOf(accent);
  const chosen = Array.from(
    { length: Number(each) },
    () => texts[Math.floor(random() * texts.length)],
  ).filter(text => text !== undefined);
  // Every phone lasts alike, which tells when each of them is said.
  const sentences = chosen.map(text => ({ ...text, phoneMs: Math.round(between(62, 115)) }));
  const script = sentences.map(({ phones, phoneMs }, i) => {
    const spoken = phones.split(' ').flatMap(phone => spelling.get(phone) ?? []);
    const pitch = between(90, 220).toFixed(0);
    return `(set! FP_duration ${phoneMs}) (set! FP_F0 ${pitch})
(set! u (utt.synth (Utterance Phones (${silence} ${spoken.join(' ')} ${silence})))) (utt.save.wave u "${join(scratch, `${i}.wav`)}" 'riff)`;
  });
  speakAll(`(voice_${voice})`, script);
  let made = 0;
  sentences.forEach(({ phoneMs, ...text }, i) => {
    const output = join(scratch, `${i}.wav`);
    if (!existsSync(output)) return;
    const { samples, sampleRateHz } = decodeWav(readFileSync(output), output);
    rmSync(output);
    const whole = Int16Array.from(samples, sample => Math.round(32_767 * Math.max(-1, Math.min(1, sample))));
    sound.write(Buffer.from(whole.buffer));
    index.write(
      `${JSON.stringify({ ...text, voice, segments: segmentsOf(text.phones, spelling, phoneMs), sampleRateHz, at, length: whole.length })}\n`,
    );
    at += whole.length;
    made += 1;
  });
  console.log(`${voice}: ${made} of ${sentences.length}`);
}
sound.end();
index.end();
rmSync(scratch, { recursive: true });
