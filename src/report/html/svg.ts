import type { Figure } from '../document/blocks.ts';
import type { Scene, Shape } from '../plot/scene.ts';
import { escapeText } from './escape.ts';
import { drawingStyle } from './style.ts';

/** A hundredth of a point is finer than any printer. */
const at = (value: number): string => String(Math.round(value * 100) / 100);

function shape(own: Shape): string {
  switch (own.kind) {
    case 'box':
      return `<rect class="f-${own.ink}" x="${at(own.x)}" y="${at(own.y)}" width="${at(own.width)}" height="${at(own.height)}"/>`;
    case 'line': {
      if (own.points.length < 2) return '';
      const points = own.points.map(([x, y]) => `${at(x)},${at(y)}`).join(' ');
      const dashes = own.dashed ? ' stroke-dasharray="3 2"' : '';
      return `<polyline class="s-${own.ink}" stroke-width="${own.width}"${dashes} points="${points}"/>`;
    }
    case 'dot':
      return `<circle class="f-${own.ink}" cx="${at(own.x)}" cy="${at(own.y)}" r="${own.radius}"/>`;
    case 'flag': {
      const half = own.size / 2;
      return `<path class="f-${own.ink} s-flag" d="M${at(own.x)} ${at(own.y)}l${-half} ${-own.size}h${own.size}z"/>`;
    }
    case 'text':
      return `<text class="f-${own.ink}" x="${at(own.x)}" y="${at(own.y)}" font-size="${own.size}"${
        own.anchor ? ` text-anchor="${own.anchor}"` : ''
      }>${escapeText(own.text)}</text>`;
  }
}

const svg = ({ width, height, shapes }: Scene, alt: string): string =>
  `<svg viewBox="0 0 ${at(width)} ${at(height)}" role="img" aria-label="${escapeText(alt)}">${shapes.map(shape).join('')}</svg>`;

/** A drawing with its title, inside the page. */
export const figure = ({ title, alt, scene }: Figure): string =>
  `<figure>${title === '' ? '' : `<figcaption>${escapeText(title)}</figcaption>`}${svg(scene, alt)}</figure>`;

/** A drawing as a file of its own. */
export const svgFile = (scene: Scene, alt: string): string =>
  svg(scene, alt)
    .replace(
      '<svg ',
      `<svg xmlns="http://www.w3.org/2000/svg" width="${at(scene.width)}pt" height="${at(scene.height)}pt" `,
    )
    .replace('>', `><style>${drawingStyle}</style><rect width="100%" height="100%" fill="var(--paper)"/>`);
