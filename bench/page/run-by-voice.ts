import buildPage from '../../tests/tablet/build-page.ts';
import { pageByVoice } from './by-voice.ts';

/** `npm run page-by-voice [-- profile ...]`: demo-four, unless others are named. */
const names = process.argv.slice(2);
await buildPage();
for (const name of names.length > 0 ? names : ['demo-four']) await pageByVoice(name);
