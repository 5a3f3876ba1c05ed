import { usualLanguage } from '../../../prompts/index.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import { trustWords } from './words.ts';

export const CERTIFICATE_PATH = '/trust/first-fire-authority.crt';

const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const STYLE =
  'body{font:1.1rem/1.5 sans-serif;max-width:42rem;margin:1rem auto;padding:0 1rem;color:#111;background:#fff}' +
  'code{font-size:1rem;overflow-wrap:anywhere;font-weight:bold}' +
  'a{display:inline-block;padding:1.2rem;margin:.5rem 0;border:.15rem solid;color:#00306e}summary{padding:1rem 0;font-weight:bold}';

/** The language that comes first in an Accept-Language header, of those there are (RFC 9110, section 12.5.4, without weights). */
export function languageOf(accepted: string | undefined): LanguageCode {
  const wanted = (accepted ?? '').split(',').map(tag => tag.trim().slice(0, 2).toLowerCase());
  return wanted.find((tag): tag is LanguageCode => Object.hasOwn(trustWords, tag)) ?? usualLanguage;
}

/**
 * How a device comes to trust the laptop: what to compare, the certificate, and the steps. Where settings are found:
 * from memory of Android 14, iOS 17 and Windows 11.
 */
export function trustPage(fingerprint: string, language: LanguageCode): string {
  const words = trustWords[language];
  const systems = words.systems.map(
    ({ name, steps }) =>
      `<details><summary>${escaped(name)}</summary><ol>${steps.map(step => `<li>${escaped(step)}</li>`).join('')}</ol></details>`,
  );
  return `<!doctype html><html lang="${language}"><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>${escaped(words.title)}</title><style>${STYLE}</style><main><h1>${escaped(words.title)}</h1>
<p>${escaped(words.why)}</p><p><strong>${escaped(words.compare)}</strong></p>
<p>${escaped(words.fingerprint)}:<br><code>${escaped(fingerprint)}</code></p>
<p><a href="${CERTIFICATE_PATH}" download>${escaped(words.take)}</a></p>
${systems.join('\n')}
<p>${escaped(words.limits)}</p><p><a href="/">${escaped(words.back)}</a></p></main></html>`;
}
