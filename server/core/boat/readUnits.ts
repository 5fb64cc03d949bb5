import { DEFAULT_UNITS, unitsSchema } from '../../../schema/boatFile.ts';
import { isMap } from '../../../schema/fields.ts';
import { unitsMeant } from '../../../schema/tradeWords.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { hasSlip, valueAt } from '../text/reading/values.ts';
import { valueFault } from './fault.ts';
import type { SectionReader } from './sectionReader.ts';

/** The units of bare numbers: as written, or as they are plainly meant while they are written wrong. */
export function readUnits({ section, log }: SectionReader, syntax: Syntax): FileUnits {
  const raw = valueAt(syntax, ['units']);
  const isWord = typeof raw === 'string' && raw.trim() !== '';
  const byWord = isWord ? unitsMeant(raw) : null;
  if (isWord) tellWord(raw, byWord, log);
  const meant: Partial<FileUnits> | null = byWord ?? (isMap(raw) ? meantByKeys(raw) : null);
  const read = isWord ? null : section(() => unitsSchema, ['units'], 'the units', true);
  // Bare numbers may be in another unit than the one in force: every figure says that it was made without the units.
  const isSlip = /^units\b/m.test(syntax.text) && hasSlip(syntax, ['units']);
  if (isSlip || log.findings.some(({ severity }) => severity === 'error')) log.leftOut.push('units');
  return {
    length: read?.length ?? meant?.length ?? DEFAULT_UNITS.length,
    mass: read?.mass ?? meant?.mass ?? DEFAULT_UNITS.mass,
  };
}

/** `{ length: inches }`: each key by what is written at it. */
const meantByKeys = ({ length, mass }: Readonly<Record<string, unknown>>): Partial<FileUnits> => {
  const byLength = typeof length === 'string' ? unitsMeant(length) : null;
  const byMass = typeof mass === 'string' ? unitsMeant(mass) : null;
  return { ...(byLength ? { length: byLength.length } : {}), ...(byMass ? { mass: byMass.mass } : {}) };
};

function tellWord(said: string, meant: FileUnits | null, log: SectionReader['log']): void {
  const right = `{ length: ${meant?.length ?? 'mm'}, mass: ${meant?.mass ?? 'g'} }`;
  const place = { on: 'value', path: ['units'] } as const;
  log.findings.push(
    valueFault('wrong-value', ['units'], `Units are given for lengths and masses: “units: ${right}”, not “${said}”.`, {
      mends: meant ? [{ title: `Change to “${right}”`, changes: [{ kind: 'replace', place, text: right }] }] : [],
    }),
  );
}
