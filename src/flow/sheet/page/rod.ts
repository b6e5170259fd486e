import { type Markup, svg } from '../../../base/markup/element.ts';

/** The painted rod that runs across the head of the page, blocks like those of the diagrams' rulers. */
export function rod(): Markup {
  const blocks = Array.from({ length: 12 }, (_, index) => `M${index * 160} 0h80v10h-80z`).join('');
  return svg(
    'svg',
    { class: 'rod', viewBox: '0 0 1920 10', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    svg('path', { d: blocks }),
    svg('path', { d: 'M0 1H1920M0 9H1920', stroke: '#000', 'stroke-width': 2 }),
  );
}
