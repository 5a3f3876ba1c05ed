import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { noticeText } from './notice/write.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
writeFileSync(new URL('../NOTICE', import.meta.url), noticeText(root));
