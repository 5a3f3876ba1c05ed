import { createHash } from 'node:crypto';
import type { Block, Cell, Column, ReportDocument, Row } from '../document/blocks.ts';
import { escapeText, isolate } from './escape.ts';
import { style } from './style.ts';
import { figure } from './svg.ts';

const classes = (...names: readonly (string | undefined | false)[]): string => {
  const own = names.filter(name => typeof name === 'string' && name !== '').join(' ');
  return own === '' ? '' : ` class="${own}"`;
};

function cellBody({ text, note, strong }: Cell): string {
  const body = strong ? `<strong>${isolate(text)}</strong>` : isolate(text);
  return note === undefined ? body : `${body}<small>${isolate(note)}</small>`;
}

function row(own: Row, columns: readonly Column[]): string {
  if (own.kind === 'cells') {
    const cells = own.cells.map(
      (cell, index) =>
        `<td${classes(cell.tone, columns[index]?.align === 'right' && 'r')}>${cellBody(cell)}</td>`,
    );
    return `<tr>${cells.join('')}</tr>`;
  }
  const right = own.right ? `<span${classes(own.right.tone)}>${cellBody(own.right)}</span>` : '';
  const detail = own.detail === undefined ? '' : `<small>${isolate(own.detail)}</small>`;
  return `<tr class="group"><td colspan="${columns.length}"><div class="head"><strong${classes(own.title.tone)}>${isolate(own.title.text)}</strong>${right}</div>${detail}</td></tr>`;
}

function table(columns: readonly Column[], rows: readonly Row[]): string {
  const widths = columns.map(({ width }) => `<col width="${Math.round(width * 100)}%">`).join('');
  const heads = columns
    .map(
      ({ title, align }) => `<th scope="col"${classes(align === 'right' && 'r')}>${escapeText(title)}</th>`,
    )
    .join('');
  return `<div class="scroll"><table><colgroup>${widths}</colgroup><thead><tr>${heads}</tr></thead><tbody>${rows
    .map(own => row(own, columns))
    .join('')}</tbody></table></div>`;
}

function block(own: Block): string {
  switch (own.type) {
    case 'banner':
      return `<div role="${own.tone === 'bad' ? 'alert' : 'note'}"${classes('banner', own.tone)}>${isolate(own.text)}${
        own.detail === undefined ? '' : `<p>${isolate(own.detail)}</p>`
      }</div>`;
    case 'title':
      return `<h1>${escapeText(own.text)}<small>${escapeText(own.note)}</small></h1>`;
    case 'lead':
      return `<p${classes('lead', own.tone)}>${isolate(own.text)}</p>`;
    case 'section':
      return `<h2>${escapeText(own.title)}</h2>${own.note === undefined ? '' : `<p class="note">${escapeText(own.note)}</p>`}`;
    case 'text':
      return `<p${classes(own.tone)}>${isolate(own.text)}</p>`;
    case 'facts':
      return `<dl>${own.rows
        .map(
          ({ label, value }) =>
            `<div><dt>${escapeText(label)}</dt><dd${classes(value.tone)}>${cellBody(value)}</dd></div>`,
        )
        .join('')}</dl>`;
    case 'table':
      return table(own.columns, own.rows);
    case 'list':
      return `<ul${classes(own.boxes && 'boxes')}>${own.items.map(item => `<li${classes(item.tone, item.ticked && 'ticked')}>${cellBody(item)}</li>`).join('')}</ul>`;
    case 'figures':
      return `<div${classes('figures', own.perRow === 2 && 'two')}>${own.figures.map(figure).join('')}</div>`;
    case 'folded':
      return `<details><summary>${isolate(own.summary)}</summary>${own.blocks.map(block).join('\n')}</details>`;
    case 'signatures':
      return `<div class="sign">${own.lines
        .map(
          ({ role, name, note }) =>
            `<div><div class="line"></div>${isolate(name)}<br><span class="muted">${escapeText(role)}${note === '' ? '' : ` \u00b7 ${escapeText(note)}`}</span></div>`,
        )
        .join('')}</div>`;
    case 'hash':
      return `<footer class="hash">${escapeText(own.label)}<code>${escapeText(own.hash)}</code></footer>`;
  }
}

/**
 * The report as one HTML file: no script, nothing from outside, and a policy that lets nothing in.
 * Every text of the record is escaped; only the style of this file is allowed, by its hash.
 */
export function renderHtml({ language, title, blocks }: ReportDocument): string {
  const styleHash = createHash('sha256').update(style).digest('base64');
  const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeText(title)}</title>
<style>${style}</style>
</head>
<body>
${blocks.map(block).join('\n')}
</body>
</html>
`;
}
