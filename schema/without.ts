import * as z from 'zod';
import { text } from './fields.ts';

/** Payload entries that are ashore, by their names. */
export const withoutKey = (description: string, example: string) =>
  z
    .array(text({ description: 'The name of a payload entry.', examples: [example] }), {
      error: `Expected a list of names, such as [${example}].`,
    })
    .meta({ description, shown: [[example]] })
    .optional();
