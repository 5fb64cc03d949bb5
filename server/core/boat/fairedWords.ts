import { areaOf, volumeOf } from '../geometry/cut/sizes.ts';
import type { Form } from '../geometry/form/form.ts';
import { percentText, volumeText } from '../wording/numbers.ts';
import type { Setting } from './readingContext.ts';

/** What fairing makes of a form: its volume, or of a wall the surface, against that of straight lines. */
export function fairedWords(straight: Form, faired: Form, { around, use, endsClosed }: Setting): string {
  const sizeOf = (form: Form) => (use === 'wall' ? areaOf(form, { endsClosed }) : volumeOf(form));
  const [was, is] = [sizeOf(straight), sizeOf(faired)];
  const share = percentText(Math.abs(is - was) / was, 1);
  const more = is >= was ? 'more' : 'less';
  const what = use === 'wall' ? 'surface' : 'volume';
  const all = use === 'wall' ? '' : `, ${volumeText(is, around.units)}`;
  return `faired through its points: ${share} ${more} ${what} than by straight lines${all}`;
}
