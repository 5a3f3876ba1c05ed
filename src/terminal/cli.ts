import { loadingLine } from './loading.ts';

// The program takes seconds to load, more on a busy computer: whoever looks at a screen is told before that.
const loading = loadingLine(process.argv.slice(2));
if (loading !== null && process.stdout.isTTY) console.log(loading);
await import('./program.ts');
