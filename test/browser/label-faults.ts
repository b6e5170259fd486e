import type { Page } from 'playwright-core';

/**
 * What is wrong with the lettering of every board diagram on a page: text over text, text over a number's or
 * letter's flag that is not its own, text out of the drawing. Boxes as the browser draws them; less than `slack`
 * drawing units is no fault.
 */
export function labelFaults(page: Page, slack = 1.5): Promise<string[]> {
  return page.evaluate((allowed) => {
    const faults: string[] = [];
    const overlap = (a: DOMRect, b: DOMRect): boolean =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > allowed &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > allowed;
    document.querySelectorAll<SVGSVGElement>('svg[viewBox^="0 0 1840 "]').forEach((drawing, number) => {
      const say = (what: string): void => void faults.push(`drawing ${number + 1}: ${what}`);
      const whole = drawing.getBoundingClientRect();
      const texts = Array.from(drawing.querySelectorAll('text')).map((text) => ({
        text,
        name: JSON.stringify((text.textContent ?? '').slice(0, 40)),
        box: text.getBoundingClientRect(),
      }));
      if (texts.length === 0) say('no text at all');
      texts.forEach(({ text, name, box }, index) => {
        if (box.left < whole.left - allowed || box.right > whole.right + allowed)
          say(`${name} leaves the drawing sideways`);
        if (box.top < whole.top - allowed || box.bottom > whole.bottom + allowed)
          say(`${name} leaves the drawing`);
        for (const other of texts.slice(index + 1))
          if (overlap(box, other.box)) say(`${name} over ${other.name}`);
        for (const flag of Array.from(drawing.querySelectorAll('rect[rx]'))) {
          const isOwn = flag.parentElement === text.parentElement;
          if (!isOwn && overlap(box, flag.getBoundingClientRect())) say(`${name} over a flag`);
        }
      });
      const flags = Array.from(drawing.querySelectorAll('rect[rx]')).map((flag) =>
        flag.getBoundingClientRect(),
      );
      flags.forEach((flag, index) => {
        if (flags.slice(index + 1).some((other) => overlap(flag, other)))
          say(`flag ${index + 1} over another`);
      });
    });
    if (document.querySelector('svg[viewBox^="0 0 1840 "]') === null) faults.push('no drawing at all');
    return faults;
  }, slack);
}
