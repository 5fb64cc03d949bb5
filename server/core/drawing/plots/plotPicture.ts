import { element, type Markup, svgText } from '../markup.ts';
import { type Picture, pictureOf } from '../picture.ts';

export const PLOT_WIDTH = 430;

export interface PlotHead {
  readonly id: string;
  readonly title: string;
  /** What there is to see, said in words. */
  readonly description: string;
  readonly height: number;
}

/** A plot with its title over it. */
export const plotPicture = (
  { id, title, description, height }: PlotHead,
  ...content: readonly (Markup | null)[]
): Picture =>
  pictureOf(
    { id, title, description, width: PLOT_WIDTH, height },
    element('rect', { class: 'paper', width: PLOT_WIDTH, height }),
    element('text', { class: 'caption', x: 12, y: 20 }, svgText(title)),
    ...content,
  );
