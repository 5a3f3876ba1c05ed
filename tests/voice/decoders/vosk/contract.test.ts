import { createVoskDecoder } from '../../../../src/voice/decoders/vosk/decoder.ts';
import { UNKNOWN } from '../../../../src/voice/decoders/vosk/grammar.ts';
import { decoderContract } from '../contract.ts';

/** An engine that is told what is about to be said, and writes it down by its phrases as Vosk would. */
decoderContract('Vosk', async () => {
  let known = new Set<string>();
  let text = '';
  const written = () => text.split(' ').map(word => (known.has(word) ? word : UNKNOWN));
  const decoder = createVoskDecoder({
    setPhrases(phrases) {
      known = new Set(phrases.flatMap(phrase => phrase.split(' ')));
    },
    accept: async () => ({ kind: 'partial', text: text === '' ? '' : written().join(' ') }),
    async finish() {
      const words = text === '' ? [] : written().map(word => ({ word, conf: 0.9 }));
      text = '';
      return { kind: 'final', words };
    },
    close: () => {},
  });
  return {
    decoder,
    says: words => {
      text = words;
    },
  };
});
