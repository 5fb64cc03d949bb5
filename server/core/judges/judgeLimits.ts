import type { Boat } from '../boat/boat.ts';
import type { InCondition } from '../conditions/loadingCondition.ts';
import type { Figure } from '../figures/figure.ts';
import { boundText, type Figured, figuredIn, isKept, limitWords, mainText, offBeyond } from '../figures/figured.ts';
import type { FindingCode } from '../findings/catalogue/catalogue.ts';

/** A figure outside its limit, in words. */
export interface OutOfLimit {
  readonly figured: Figured;
  readonly code: FindingCode;
  readonly message: string;
}

/** Special sentences, by the figure: `shown` with the digits that show that it is out, `bound` the end that it is past. */
export type Sentences = Readonly<
  Partial<
    Record<string, (told: { readonly figured: Figured; readonly shown: string; readonly bound: string }) => string>
  >
>;

/** The figures of a condition that are outside their limits, in the order of the table; each that raises a finding. */
export const outOfLimits = (
  boat: Boat,
  inCondition: InCondition,
  figures: readonly Figure[],
  sentences: Sentences,
): readonly OutOfLimit[] =>
  figuredIn(boat, inCondition, figures).flatMap((figured): readonly OutOfLimit[] => {
    const { id, finding } = figured.figure;
    if (isKept(figured) || !finding) return [];
    const sentence = sentences[id];
    const message = sentence
      ? sentence({ figured, shown: offBeyond(figured), bound: boundText(figured) })
      : plainSentence(figured);
    return [{ figured, code: finding, message }];
  });

const plainSentence = (figured: Figured): string =>
  `${figured.condition.title}, the ${figured.figure.words} is ${mainText(figured)}, limit ${limitWords(figured)}.`;
