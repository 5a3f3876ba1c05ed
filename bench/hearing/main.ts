import { type SpeakerSet, speakerSets } from './material.ts';
import { writePage } from './page/write.ts';
import { parts } from './parts.ts';
import { freeTextPeers, PeerError } from './peers/free-text.ts';
import { clipsOf, peopleFolders } from './people/folders.ts';
import { RecordingsError } from './people/recordings.ts';
import { listenerRemembering } from './remembered.ts';
import { storedResults, storePart } from './results.ts';
import { sizes } from './sizes.ts';

const usage = `npm run hearing -- [${Object.keys(parts).join(' | ')} ...] [--quick | --sample] [--development] [--people <folder> ...] [--peer <name>=<command> ...] | --page`;

/** How well a loud bay is heard: prints, and writes docs/hearing.json and docs/hearing.md. */
async function main(all: readonly string[]): Promise<void> {
  if (all.length === 1 && all[0] === '--page') {
    writePage(storedResults());
    return;
  }
  const { peers: freeText, rest } = freeTextPeers(all);
  const { folders, rest: args } = peopleFolders(rest);
  const flags = args.filter(arg => arg.startsWith('--'));
  const names = args.filter(arg => !arg.startsWith('--'));
  const unknown = [
    ...flags.filter(flag => !['--quick', '--sample', '--development'].includes(flag)),
    ...names.filter(name => !Object.hasOwn(parts, name)),
  ];
  if (unknown.length > 0) {
    console.error(`${unknown.join(' and ')} cannot be measured; use: ${usage}`);
    process.exitCode = 2;
    return;
  }
  const size = flags.includes('--quick')
    ? sizes.quick
    : flags.includes('--sample')
      ? sizes.sample
      : sizes.full;
  // What settings are tried on is printed and never stored: figures in the documents are those of the test set.
  const set: SpeakerSet = flags.includes('--development') ? speakerSets.development : speakerSets.test;
  const clips = clipsOf(folders);
  for (const [name, measure] of Object.entries(parts)) {
    if (names.length > 0 ? !names.includes(name) : name === 'microphones' && !size.microphones) continue;
    console.log(`\n== ${name}, ${size.name}, ${set.name} set`);
    const say = (line: string) => console.log(`  ${line}`);
    await measure({ size, set, listener: listenerRemembering, clips, freeText, say }, results => {
      if (set.name === 'test') writePage(storePart(results));
      else console.log(JSON.stringify(results, undefined, 1));
    });
  }
}

await main(process.argv.slice(2)).catch((error: unknown) => {
  if (!(error instanceof PeerError || error instanceof RecordingsError)) throw error;
  console.error(error.message);
  process.exitCode = 2;
});
