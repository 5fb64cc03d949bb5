import { element, type Markup } from './markup.ts';

/** One drawing of the sheet. */
export interface Picture {
  readonly id: string;
  readonly title: string;
  /** What there is to see, in sentences: for those who do not see it. */
  readonly description: string;
  /** A whole `<svg>` element. Its look comes from `styleSheet`. */
  readonly svg: Markup;
}

export interface Canvas {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly width: number;
  readonly height: number;
  /** What the panel reads back: the scale and the trim of the picture. */
  readonly data?: Readonly<Record<`data-${string}`, number>>;
}

export function pictureOf(
  { id, title, description, width, height, data }: Canvas,
  ...content: readonly (Markup | null)[]
): Picture {
  const svg = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'sheet',
      // A condition may be called in several words; an id is one.
      id: id.replaceAll(/\s+/g, '-'),
      viewBox: `0 0 ${width} ${Math.ceil(height)}`,
      role: 'img',
      'aria-label': `${title}. ${description}`,
      ...Object.fromEntries(
        Object.entries(data ?? {}).map(([key, value]) => [key, String(Number(value.toPrecision(7)))]),
      ),
    },
    ...content,
  );
  return { id, title, description, svg };
}
