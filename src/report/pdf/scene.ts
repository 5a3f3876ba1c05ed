import type { Scene, Shape } from '../plot/scene.ts';
import { BEYOND_OPACITY, inks } from './palette.ts';
import type { Doc, TextSetter } from './text.ts';

/** Draws a scene with its top left corner at (left, top), by the same geometry as the HTML does. */
export function drawScene(doc: Doc, text: TextSetter, scene: Scene, left: number, top: number): void {
  for (const shape of scene.shapes) drawShape(doc, text, shape, left, top);
}

function drawShape(doc: Doc, text: TextSetter, shape: Shape, left: number, top: number): void {
  const color = inks[shape.ink];
  switch (shape.kind) {
    case 'box': {
      doc.rect(left + shape.x, top + shape.y, shape.width, shape.height);
      if (shape.ink === 'drill') doc.lineWidth(0.7).fillAndStroke('#fff', color);
      else
        doc
          .fillOpacity(shape.ink === 'beyond' ? BEYOND_OPACITY : 1)
          .fill(color)
          .fillOpacity(1);
      return;
    }
    case 'line': {
      const [first, ...rest] = shape.points;
      if (!first || rest.length === 0) return;
      doc.moveTo(left + first[0], top + first[1]);
      for (const [x, y] of rest) doc.lineTo(left + x, top + y);
      if (shape.dashed) doc.dash(3, { space: 2 });
      doc.lineWidth(shape.width).lineJoin('round').stroke(color);
      doc.undash();
      return;
    }
    case 'dot':
      doc.circle(left + shape.x, top + shape.y, shape.radius).fill(color);
      return;
    case 'flag': {
      const [x, y, half] = [left + shape.x, top + shape.y, shape.size / 2];
      doc.polygon([x, y], [x - half, y - shape.size], [x + half, y - shape.size]);
      if (shape.ink === 'drill') doc.lineWidth(0.7).fillAndStroke('#fff', color);
      else doc.fill(color);
      return;
    }
    case 'text': {
      const style = { face: 'plain', size: shape.size, color } as const;
      const width = shape.anchor === undefined ? 0 : text.width(shape.text, style);
      const x = left + shape.x - (shape.anchor === 'middle' ? width / 2 : width);
      // The font's ascender is about 0.93 of its size; scenes give base lines.
      text.draw(shape.text, x, top + shape.y - 0.93 * shape.size, style);
    }
  }
}
