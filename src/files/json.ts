/** What a text in JSON holds; or why it is none, as the middle part of a sentence. */
type Json = { readonly ok: true; readonly data: unknown } | { readonly ok: false; readonly why: string };

/** Reads JSON that people may have written by hand: what is wrong is told by its line, where that is known. */
export function readJson(text: string): Json {
  try {
    return { ok: true, data: JSON.parse(text) };
  } catch (error) {
    return { ok: false, why: whyNot(text, error instanceof Error ? error.message : '') };
  }
}

function whyNot(text: string, message: string): string {
  if (text.trim() === '') return 'it is empty';
  if (!/^\s*[{[]/.test(text)) return 'it does not begin with "{"';
  const at = faultAt(text, message);
  if (message.includes('end of JSON input') || (at !== null && at >= text.trimEnd().length))
    return 'it breaks off before its end';
  return at === null ? 'something in it is wrong' : `line ${text.slice(0, at).split('\n').length} is wrong`;
}

/** So many characters of the text stand before the place in the message of the engine. */
const SHOWN_BEFORE = 10;

/** The engine's message tells the place, or what stands around it; null where that stands twice, or the text is short. */
function faultAt(text: string, message: string): number | null {
  const place = / at position (\d+)/.exec(message)?.[1];
  if (place !== undefined) return Number(place);
  const around = /^Unexpected token '.+?', \.\.\."(.*)"(?:\.\.\.)? is not valid JSON$/su.exec(message)?.[1];
  if (around === undefined) return null;
  const found = text.indexOf(around);
  return text.indexOf(around, found + 1) >= 0 ? null : found + SHOWN_BEFORE;
}
