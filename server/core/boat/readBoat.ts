import type * as z from 'zod';
import { type BoatSchemas, boatSchemas, DEFAULT_UNITS, unitsSchema } from '../../../schema/boatFile.ts';
import type { Describer } from '../../../schema/describe.ts';
import { isMap } from '../../../schema/fields.ts';
import { type Path, pathKey } from '../../../schema/path.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Finding } from '../findings/finding.ts';
import { createShapes, type Shapes } from '../geometry/shapes/shapes.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { entriesOf, hasSlip, isBroken, kindAt, valueAt } from '../text/reading/values.ts';
import { checkArrangement, meshesBeyondHull, withoutRepeats } from './arrangement.ts';
import type { Boat, Entry, Waterline } from './boat.ts';
import { aboardAndAshore, withBoatOfDay } from './boatOfDay.ts';
import { checkKeys, missingSections } from './checkSections.ts';
import { checkTrials } from './checkTrials.ts';
import { valueFault } from './fault.ts';
import { entriesRead } from './mostEntries.ts';
import { type CheckedValue, checkValue } from './readEntry.ts';
import { readBay, readCompartment, readShell, readTank } from './readHull.ts';
import type { ReadingContext } from './readingContext.ts';
import { readLimits, readStock, stockDensities } from './readLimits.ts';
import { type ReadEntry, readOne } from './readOne.ts';
import { readPart } from './readPart.ts';
import { readTrial } from './readTrial.ts';
import { readWater } from './readWater.ts';
import { sameData } from './sameData.ts';
import { type BoatSource, entriesIn, type Source } from './source.ts';
import type { Trial } from './trial.ts';

export interface BoatReading {
  readonly boat: Boat;
  /** The same with what its entries were read from. */
  readonly source: BoatSource;
  readonly trials: readonly Trial[];
  readonly findings: readonly Finding[];
  /** Mesh files that the boat is made of, by name. */
  readonly meshNames: readonly string[];
  /** For the next reading of this file. */
  readonly kept: KeptEntries;
}

/** What a boat is read with besides its text. */
export interface Resources {
  readonly meshes: MeshLookup;
  readonly shapes: Shapes;
}

/** What was read before, so that a keystroke reads only what it changed. */
export interface KeptEntries {
  /** Entries in their order, by the place of their list. */
  readonly lists: ReadonlyMap<string, readonly KeptEntry[]>;
  /** Sections, by their place. */
  readonly sections: ReadonlyMap<string, KeptSection>;
  readonly schemas: { readonly units: FileUnits; readonly made: BoatSchemas };
}

interface KeptEntry extends ReadEntry {
  /** Its text, and what is to be known to read it; null where it draws on other places of the file. */
  readonly source: string | null;
  readonly context: string;
}

interface KeptSection {
  readonly schema: unknown;
  readonly raw: unknown;
  readonly checked: CheckedValue<unknown>;
}

/**
 * Reads a boat from the text: every section and entry by its own schema, so that a fault costs only the entry that it is
 * in. Defaults stand in for sections that cannot be read; what is left out is named in `leftOut`.
 */
export function readBoat(
  syntax: Syntax,
  describer: Describer,
  kept?: KeptEntries,
  { meshes, shapes }: Resources = { meshes: () => null, shapes: createShapes() },
): BoatReading {
  const findings: Finding[] = [];
  const meshed = new Map<Entry, readonly string[]>();
  const meshNames = new Set<string>();
  const lists = new Map<string, readonly KeptEntry[]>();
  const sections = new Map<string, KeptSection>();
  const leftOut: string[] = [];
  // Bays and trials are in no figure anyway.
  const leaveOut = ([section]: Path, name: string) => {
    if (section !== 'bays' && section !== 'trials') leftOut.push(name);
  };

  const check = <T>(schema: z.ZodType<T>, path: Path, what: string, keyByKey = false): T | null => {
    const raw = valueAt(syntax, path);
    if (raw === undefined || raw === null) return null;
    const key = pathKey(path);
    const had = kept?.sections.get(key);
    const isSame = had?.schema === schema && sameData(had.raw, raw);
    const keysAt = (inside: Path) => describer.keysAt([...path, ...inside]);
    const checked = isSame
      ? (had.checked as CheckedValue<T>)
      : checkValue(schema, raw, { path, what, keysAt, keyByKey });
    sections.set(key, isSame ? had : { schema, raw, checked });
    // Of a hull that is not read whole no trial can be judged.
    if (!findings.some(isOfBoat)) findings.push(...checked.findings);
    return checked.value;
  };

  const units: FileUnits = { ...DEFAULT_UNITS, ...known(check(unitsSchema, ['units'], 'the units', true)) };
  // Bare numbers then stand for mm and g, which they may not be: every figure says that it was made without the units.
  const isSlip = /^units\b/m.test(syntax.text) && hasSlip(syntax, ['units']);
  if (isSlip || findings.some(({ severity }) => severity === 'error')) leftOut.push('units');
  const schemas = kept && sameUnits(kept.schemas.units, units) ? kept.schemas.made : boatSchemas(units);
  const stockEntry = check(schemas.stock, ['stock'], 'the stock', true);
  const around: ReadingContext = { units, stock: stockDensities(stockEntry), meshes, shapes };
  const context = `${units.length} ${units.mass} ${around.stock.lead} ${around.stock.foam}`;

  const list = <T, E extends Entry>(
    path: Path,
    what: string,
    schemaOf: () => z.ZodType<T>,
    read: (entry: T, path: Path, around: ReadingContext, findings: Finding[]) => E | null,
  ): readonly Source<T, E>[] => {
    const kind = kindAt(syntax, path);
    if (kind && kind !== 'list') {
      findings.push(
        valueFault(
          'not-a-list',
          path,
          `“${path.at(-1)}” is a list: begin each entry on a line with “- ”, such as “- name: battery”.`,
        ),
      );
      leaveOut(path, String(path.at(-1)));
      return [];
    }
    const before = kept?.lists.get(pathKey(path)) ?? [];
    const results: KeptEntry[] = [];
    lists.set(pathKey(path), results);
    return entriesRead(entriesOf(syntax, path), what, findings, leaveOut).flatMap((item, i) => {
      const had = before[i];
      const source = item.shared ? null : item.source;
      const isSame = source !== null && had?.source === source && had.context === context && hasItsFiles(had, meshes);
      const result = isSame
        ? had
        : { ...readOne(schemaOf(), item.path, item.value, { what, describer, around, read }), source, context };
      results.push(result);
      findings.push(...result.findings);
      for (const name of result.files.keys()) meshNames.add(name);
      if (result.entry && result.files.size > 0) meshed.set(result.entry, [...result.files.keys()]);
      if (result.entry === null) leaveOut(path, nameOf(item.value) ?? `${what} ${Number(item.path.at(-1)) + 1}`);
      return result.entry === null ? [] : [{ checked: result.checked as T, entry: result.entry as E }];
    });
  };

  leftOut.push(...checkKeys(syntax, findings));
  const name = check(schemas.boat, ['boat'], 'the boat') ?? '';
  const scale = readScale(check(schemas.scale, ['scale'], 'the scale'), findings);
  const waterEntry = check(schemas.water, ['water'], 'the water', true);
  const water = readWater(waterEntry, findings);
  const waterline = readWaterline(check(schemas.waterline, ['hull', 'waterline'], 'the waterline'));
  const sources = {
    water: waterEntry,
    stock: stockEntry,
    shells: list(['hull', 'shells'], 'shell', () => schemas.shell, readShell),
    compartments: list(['hull', 'compartments'], 'compartment', () => schemas.compartment, readCompartment),
    tanks: list(['hull', 'tanks'], 'tank', () => schemas.tank, readTank),
    ...aboardAndAshore(list(['payload'], 'part', () => schemas.part, readPart)),
    around,
  };
  const boat = {
    name,
    scale,
    units,
    water,
    waterline,
    shells: entriesIn(sources.shells),
    compartments: entriesIn(sources.compartments),
    tanks: entriesIn(sources.tanks),
    payload: entriesIn(sources.payload),
    ashore: entriesIn(sources.ashore),
    bays: entriesIn(list(['bays'], 'bay', () => schemas.bay, readBay)),
    stock: readStock(stockEntry),
    limits: readLimits(check(schemas.limits, ['limits'], 'the limits', true)),
  };
  const length = check(schemas.length, ['hull', 'length'], 'the length')?.value ?? null;
  const whole = { ...boat, length: length ?? standInLength(boat, shapes), leftOut };
  const compartmentNames = entriesOf(syntax, ['hull', 'compartments']).flatMap(item => nameOf(item.value) ?? []);
  findings.push(...missingSections(syntax, length), ...checkArrangement(whole, compartmentNames, shapes));
  const trials = entriesIn(list(['trials'], 'trial', () => schemas.trial, readTrial));
  const checked = checkTrials(trials, whole, compartmentNames, shapes);
  const ofDay = withBoatOfDay(sources, checked.trials);
  findings.push(...checked.findings, ...ofDay.findings);
  if (length !== null) findings.push(...meshesBeyondHull(meshed, whole, shapes));
  const heard = findings.filter(finding => !isUncertain(syntax, finding));
  return {
    boat: whole,
    source: { ...sources, boat: whole },
    trials: ofDay.trials,
    findings: withoutRepeats(heard),
    meshNames: [...meshNames],
    kept: { lists, sections, schemas: { units, made: schemas } },
  };
}

/** The mesh files that an entry was made from are still what they were. */
function hasItsFiles({ files }: ReadEntry, meshes: MeshLookup): boolean {
  for (const [name, file] of files) if (meshes(name) !== file) return false;
  return true;
}

/** An error that leaves something out of the boat itself. */
const isOfBoat = ({ severity, place }: Finding): boolean =>
  severity === 'error' && !('path' in place && place.path[0] === 'trials');

/** What a slip of the pen leaves in uncertainty is not said: it would be a second complaint about the same slip. */
function isUncertain(syntax: Syntax, { code, place }: Finding): boolean {
  if ('path' in place && isBroken(syntax, place.path)) return true;
  if (code.startsWith('trial-')) return syntax.slips.length > 0;
  // The compartment may be there under a name that cannot be read, and bare sizes may be in another unit.
  if (code === 'unknown-compartment') return hasSlip(syntax, ['hull', 'compartments']);
  if (code === 'perhaps-inside' && hasSlip(syntax, ['hull', 'compartments'])) return true;
  return BY_SIZES.has(code) && hasSlip(syntax, ['units']);
}

/** Findings that come of sizes, which bare numbers may give in another unit. */
const BY_SIZES: ReadonlySet<string> = new Set(['sticks-out', 'perhaps-inside', 'compartments-overlap']);

const known = (units: { length?: FileUnits['length'] | undefined; mass?: FileUnits['mass'] | undefined } | null) => ({
  ...(units?.length ? { length: units.length } : {}),
  ...(units?.mass ? { mass: units.mass } : {}),
});

const sameUnits = (a: FileUnits, b: FileUnits): boolean => a.length === b.length && a.mass === b.mass;

function nameOf(raw: unknown): string | null {
  const name = isMap(raw) ? raw.name : undefined;
  return typeof name === 'string' || typeof name === 'number' ? String(name) : null;
}

const readWaterline = (entry: { bow: { value: number }; stern: { value: number } } | null): Waterline | null =>
  entry ? { bow: entry.bow.value, stern: entry.stern.value } : null;

/** `1:60` as 1/60. */
function readScale(text: string | null, findings: Finding[]): number | null {
  if (text === null) return null;
  const parts = /^1\s*[:/]\s*(\d+(?:\.\d+)?)$/.exec(text);
  const ratio = parts ? Number(parts[1]) : 0;
  if (ratio >= 0.1 && ratio <= 100_000) return 1 / ratio;
  findings.push(valueFault('wrong-value', ['scale'], `Expected a scale such as 1:60, but this says “${text}”.`));
  return null;
}

/**
 * With no length yet the aftmost end of what is in the file stands in, so that a half-typed file still floats; where
 * nothing lies aft of the bow tip, as far as it reaches forward. Zero where there is nothing.
 */
function standInLength(boat: Pick<Boat, 'shells' | 'compartments' | 'payload'>, shapes: Shapes): number {
  const spans = [...boat.shells, ...boat.compartments].map(entry => shapes.boundsOf(entry.form));
  const all = [...spans, ...boat.payload];
  const aftmost = Math.max(0, ...all.map(({ to }) => to[0]));
  return aftmost || Math.max(0, ...all.map(({ from }) => -from[0]));
}
