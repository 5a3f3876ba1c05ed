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
  const sheet = new Sheet(doc, text);
  report.blocks.forEach((block, index) => {
    drawBlock(sheet, block, report.blocks[index + 1]);
  });
  if (text.lacksLetters)
    drawBlock(sheet, {
      type: 'text',
      tone: 'warn',
      text: words.lettersLacking,
    });
  const { title, warning, footer } = report;
  sheet.finish({
    title,
    warning,
    footer,
    pageOf: (page, of) => fill(words.page, { page: String(page), of: String(of) }),
  });
  doc.end();
  await ended;
  return Buffer.concat(chunks);
}
