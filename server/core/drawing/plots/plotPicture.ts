import { element, type Markup, svgText } from '../markup.ts';
import { type Picture, pictureOf } from '../picture.ts';

export interface PlotHead {
  readonly id: string;
  readonly title: string;
  /** What there is to see, said in words. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
}

/** A plot with its title over it. */
export const plotPicture = (
  { id, title, description, width, height }: PlotHead,
  ...content: readonly (Markup | null)[]
): Picture =>
  pictureOf(
    { id, title, description, width, height },
    element('rect', { class: 'paper', width, height }),
    element('text', { class: 'caption', x: 12, y: 20 }, svgText(title)),
    ...content,
  );
