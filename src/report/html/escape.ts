const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text that stays text between tags and inside quoted attributes. */
export const escapeText = (text: string): string => text.replace(/[&<>"']/g, found => entities[found] ?? '');

/** Text whose own direction does not disturb what stands beside it. */
export const isolate = (text: string): string => `<bdi>${escapeText(text)}</bdi>`;
