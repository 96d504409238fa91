import { MARK_STROKE } from '../../draft/marks';
import { svgElement } from '../patterns';

/** A symbol of a walk on its 24 by 24 field, in the colour of its text. @param sizePx side of the drawing */
export function drawnSymbol(
  { stroked, solid }: { readonly stroked: string; readonly solid: string },
  sizePx: number,
): SVGElement {
  const svg = svgElement('svg', {
    viewBox: '0 0 24 24',
    width: sizePx,
    height: sizePx,
    'aria-hidden': 'true',
    focusable: 'false',
  });
  svg.append(
    svgElement('path', {
      d: stroked,
      class: 'yard-walk-field',
      stroke: 'currentColor',
      'stroke-width': MARK_STROKE,
      'stroke-linejoin': 'round',
    }),
    svgElement('path', { d: solid, fill: 'currentColor' }),
  );
  return svg;
}
