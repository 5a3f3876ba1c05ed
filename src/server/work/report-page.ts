import { buildDocument } from '../../report/document/build.ts';
import { gather } from '../../report/gather.ts';
import { renderHtml } from '../../report/html/page.ts';
import { summarize } from '../../report/summarize.ts';
import { readHeader } from '../../session/header.ts';

/**
 * The report of a record, as one HTML page; a record that does not verify says so in its first line.
 * @throws RecordError when it cannot be read
 */
export async function reportPage(path: string): Promise<string> {
  const input = await gather(path);
  const [opened] = input.entries;
  const units = (opened ? readHeader(opened.data)?.units : undefined) ?? 'metric';
  return renderHtml(buildDocument(summarize(input), units));
}
