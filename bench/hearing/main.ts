import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';
import { type SpeakerSet, speakerSets } from './material.ts';
import { parts } from './parts.ts';
import { storePart } from './results.ts';
import { sizes } from './sizes.ts';
import { writePage } from './write-page.ts';

const usage = `npm run hearing -- [--quick] [--development] [${Object.keys(parts).join(' | ')} ...]`;

/** How well a loud bay is heard: prints, and writes docs/hearing.json and docs/hearing.md. */
async function main(args: readonly string[]): Promise<void> {
  const flags = args.filter(arg => arg.startsWith('--'));
  const names = args.filter(arg => !arg.startsWith('--'));
  const unknown = [
    ...flags.filter(flag => flag !== '--quick' && flag !== '--development'),
    ...names.filter(name => !Object.hasOwn(parts, name)),
  ];
  if (unknown.length > 0) {
    console.error(`${unknown.join(' and ')} cannot be measured; use: ${usage}`);
    process.exitCode = 2;
    return;
  }
  const size = flags.includes('--quick') ? sizes.quick : sizes.full;
  // What settings are tried on is printed and never stored: figures in the documents are those of the test set.
  const set: SpeakerSet = flags.includes('--development') ? speakerSets.development : speakerSets.test;
  const ears = {
    denoising: await createEmbeddedRecognizer(),
    plain: await createEmbeddedRecognizer({ denoise: false }),
  };
  for (const [name, measure] of Object.entries(parts)) {
    if (names.length > 0 ? !names.includes(name) : name === 'microphones' && !size.microphones) continue;
    console.log(`\n== ${name}, ${size.name}, ${set.name} set`);
    const say = (line: string) => console.log(`  ${line}`);
    await measure(size, set, ears, say, results => {
      if (set.name === 'test') writePage(storePart(results));
      else console.log(JSON.stringify(results, undefined, 1));
    });
  }
  ears.denoising.close();
  ears.plain.close();
}

await main(process.argv.slice(2));
