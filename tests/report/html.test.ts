import { createHash } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildDocument } from '../../src/report/document/build.ts';
import { renderHtml } from '../../src/report/html/page.ts';
import { summarize } from '../../src/report/summarize.ts';
import { goUntil } from '../helpers/session-rig.ts';
import {
  busReadings,
  demoHeader,
  inputOf,
  longNames,
  rightToLeft,
  sessionFor,
  tempFolder,
  writeLog,
} from './support.ts';

async function htmlOf(path: string): Promise<string> {
  return renderHtml(buildDocument(summarize(await inputOf(path)), 'us'));
}

describe('the HTML of a report', () => {
  let html = '';
  beforeAll(async () => {
    const rig = await sessionFor(join(mkdtempSync(join(tmpdir(), 'html-')), 'log.jsonl'), longNames);
    await goUntil(rig, 'fill.coolantFilled.asking');
    await rig.type('<img src=x onerror=alert(1)>');
    await rig.record.close();
    html = await htmlOf(rig.path);
  });

  test('holds no script, and shows a name with a tag in it as text', () => {
    expect(html).not.toMatch(/<script/i);
    expect(html).toContain('&lt;script&gt;alert(&quot;second&quot;)&lt;/script&gt;');
    expect(html).toContain('O&#39;Brien &amp; Sons &quot;Quality&quot;');
  });

  test('shows what was heard as text, never as markup', () => {
    expect(html).not.toMatch(/<img/i);
    expect(html).toContain('&lt;img src=x onerror=alert(1)&gt;');
  });

  test('allows nothing from outside, and of styles only its own, by its hash', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1] ?? '';
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? '';
    const hash = createHash('sha256').update(style).digest('base64');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain(`style-src 'sha256-${hash}'`);
    expect(policy).not.toContain('unsafe');
  });

  test('names no address, and styles nothing in attributes, which the policy would refuse', () => {
    expect(html).not.toMatch(/(https?:)?\/\/[a-z]/i);
    for (const [tag] of html.matchAll(/<[a-z][^>]*>/gi))
      expect(tag).not.toMatch(/\s(src|href|style|on\w+)=/i);
    expect(html).not.toMatch(/url\(|@import/i);
  });

  test('closes every element that it opens', () => {
    const open: string[] = [];
    for (const [, end, name = '', rest = ''] of html.matchAll(/<(\/?)([a-z][a-z0-9]*)([^>]*)>/gi)) {
      if (['meta', 'br', 'col'].includes(name) || rest.endsWith('/')) continue;
      if (end === '') open.push(name);
      else expect(open.pop()).toBe(name);
    }
    expect(open).toEqual([]);
  });
});

test('a name that runs from right to left keeps its direction to itself', async () => {
  const path = join(tempFolder(), 'log.jsonl');
  await writeLog(path, [], await demoHeader(rightToLeft));
  const html = await htmlOf(path);
  expect(html).toContain(`<bdi>${rightToLeft.technician}</bdi>`);
});

test('marks of direction inside a name cannot turn round what stands beside it', async () => {
  const path = join(tempFolder(), 'log.jsonl');
  const turned = { ...rightToLeft, vehicle: 'truck \u202eEVIF\u202c 5', engine: 'a\u0000b\u001bc' };
  await writeLog(path, [], await demoHeader(turned));
  const html = await htmlOf(path);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that none is left is what is tested
  expect(html).not.toMatch(/[\u202a-\u202e\u2066-\u2069\u0000\u001b]/);
});

test('five thousand readings make a page of bearable size, with every gate and plot', async () => {
  const path = join(tempFolder(), 'log.jsonl');
  await writeLog(path, busReadings(5000, 700), await demoHeader());
  const html = await htmlOf(path);
  expect(html.length).toBeLessThan(400_000);
  expect(html.match(/<svg/g)?.length).toBeGreaterThanOrEqual(4);
});

test('no reading at all is said in words', async () => {
  const path = join(tempFolder(), 'log.jsonl');
  await writeLog(path, [], await demoHeader());
  expect(await htmlOf(path)).toContain('No reading was taken.');
});
