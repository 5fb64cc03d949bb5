import * as z from 'zod';
import { flag, word } from './fields.ts';

/** Struck out: a reading in a list, by a key of its own. */
export const slipKey = () =>
  flag({
    description:
      'true: this reading is struck out as a slip of the tape or of the pen. It is still shown, but taken for nothing.',
  }).optional();

/** Readings that stand in a trial by themselves. */
const SINGLE_READINGS = ['trim', 'heel', 'fill', 'water', 'level', 'balance', 'proud'] as const;

/** Struck out: readings that stand in a trial by themselves, by their keys. */
export const slipsKey = () =>
  z
    .array(word(SINGLE_READINGS, { description: 'The key of a reading of this trial.', examples: ['trim'] }), {
      error: 'Expected a list of keys, such as [trim].',
    })
    .meta({
      description:
        'Readings of this trial that are struck out as slips, by their keys. They are still shown, but taken for nothing. A mark, a scale or a shift has “slip: true” of its own.',
      shown: [['trim']],
    })
    .optional();
