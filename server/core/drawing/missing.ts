import type { Analysis } from '../analysis/analysis.ts';

/** What a boat file has to say before there is a boat to draw; an empty list for one that has it all. */
export function missingOf({ boat }: Analysis): readonly string[] {
  return [
    ...(boat.length > 0 ? [] : ['“length” under “hull:”: from the bow tip to the stern']),
    ...(boat.shells.length + boat.compartments.length > 0
      ? []
      : ['“compartments” or “shells” under “hull:”: what keeps water out, and what lets it in']),
    ...(boat.payload.length > 0 ? [] : ['“payload:”: what goes aboard, each with its mass and its station']),
  ];
}
