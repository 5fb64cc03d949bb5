import { boatFindings } from './boatFindings.ts';
import { conditionFindings } from './conditionFindings.ts';
import { formFindings } from './formFindings.ts';
import { measuredFindings } from './measuredFindings.ts';
import { placeFindings } from './placeFindings.ts';
import { textFindings } from './textFindings.ts';
import { trialFindings } from './trialFindings.ts';

/** What the documentation says of one kind of finding. */
export interface FindingDoc {
  readonly title: string;
  readonly means: string;
  readonly why: string;
  readonly todo: string;
}

/** Every finding that the tool can make, by its code; the editor links here and `schema/REFERENCE.md` is made from it. */
export const catalogue = {
  ...textFindings,
  ...boatFindings,
  ...formFindings,
  ...placeFindings,
  ...measuredFindings,
  ...conditionFindings,
  ...trialFindings,
} satisfies Record<string, FindingDoc>;

export type FindingCode = keyof typeof catalogue;
