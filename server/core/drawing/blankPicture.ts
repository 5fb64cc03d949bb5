import type { Analysis } from '../analysis/analysis.ts';
import { captionBlock } from './captionBlock.ts';
import type { Caption } from './captions.ts';
import { element, together } from './markup.ts';
import { missingOf } from './missing.ts';
import { type Picture, pictureOf } from './picture.ts';
import { linesOf, textLines } from './wrapped.ts';

interface Blank {
  readonly id: string;
  readonly caption: Caption;
  readonly width: number;
}

/** In the place of a boat of which nothing can be drawn yet: what the file has to say first. */
export function blankPicture({ id, caption, width }: Blank, analysis: Analysis): Picture {
  const head = captionBlock(
    { heading: caption.heading, words: 'There is nothing to draw yet. Write in the file:' },
    width,
  );
  const missing = missingOf(analysis);
  const told = missing.length === 0 ? ['sizes for what is there'] : missing;
  const lines = told.map(words => linesOf(words, 14, width - 60));
  let y = head.height + 26;
  const items = lines.map(item => {
    const block = together([
      element('circle', { class: 'leader-end', cx: 24, cy: y - 5, r: 2.5 }),
      textLines(item, { kind: 'missing', x: 36, y, leading: 18 }),
    ]);
    y += item.length * 18 + 6;
    return block;
  });
  const height = Math.ceil((y + 6) / 20) * 20;
  return pictureOf(
    {
      id,
      title: caption.title,
      description: `There is nothing to draw yet. Missing: ${told.join('; ')}.`,
      width,
      height,
    },
    element('rect', { class: 'paper', width, height }),
    head.markup,
    together(items),
  );
}
