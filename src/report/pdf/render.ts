import PDFDocument from 'pdfkit';
import { fill } from '../../session/wording.ts';
import type { ReportDocument } from '../document/blocks.ts';
import { reportWords } from '../words/index.ts';
import { drawBlock } from './blocks.ts';
import { Sheet } from './sheet.ts';
import { TextSetter } from './text.ts';

/**
 * The report as a PDF with its fonts embedded. Letters of scripts that the font lacks (it has Latin, Greek,
 * Cyrillic, Armenian, Georgian, Hebrew and Arabic) are drawn as boxes, and the last page says so.
 * @param made goes into the file's properties
 */
export async function renderPdf(report: ReportDocument, made: Date): Promise<Buffer> {
  let best = await setAt(SCALES[0], report, made);
  for (const scale of SCALES.slice(1)) {
    if (best.lastFilled >= LEAST_FILLED) break;
    const smaller = await setAt(scale, report, made);
    if (smaller.pages < best.pages || smaller.lastFilled > best.lastFilled) best = smaller;
  }
  return best.pdf;
}

/** A last page with less on it is a waste of paper: everything is set a little smaller, so that it is not needed. */
const LEAST_FILLED = 0.4;
/** Down to where 7 points still stand 6 high. */
const SCALES = [1, 0.96, 0.92, 0.88] as const;

interface Setting {
  readonly pdf: Buffer;
  readonly pages: number;
  /** Share of the last page that is used. */
  readonly lastFilled: number;
}

async function setAt(scale: number, report: ReportDocument, made: Date): Promise<Setting> {
  const words = reportWords[report.language];
  const doc = new PDFDocument({
    size: report.paper,
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    lang: report.language,
    displayTitle: true,
    info: { Title: report.title, Producer: 'first-fire', Creator: 'first-fire', CreationDate: made },
  });
  const chunks: Buffer[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', resolve);
    doc.on('error', reject);
  });
  const text = new TextSetter(doc);
  const sheet = new Sheet(doc, text, scale);
  report.blocks.forEach((block, index) => {
    drawBlock(sheet, block, report.blocks[index + 1]);
  });
  if (text.lacksLetters)
    drawBlock(sheet, {
      type: 'text',
      tone: 'warn',
      text: words.lettersLacking,
    });
  const { lastFilled } = sheet;
  const pages = doc.bufferedPageRange().count;
  const { title, warning, footer } = report;
  sheet.finish({
    title,
    warning,
    footer,
    pageOf: (page, of) => fill(words.page, { page: String(page), of: String(of) }),
  });
  doc.end();
  await ended;
  return { pdf: Buffer.concat(chunks), pages, lastFilled };
}
