import { type BoatSchemas, boatSchemas, scaleSchema } from '../../../schema/boatFile.ts';
import type { Describer } from '../../../schema/describe.ts';
import type { PartEntry } from '../../../schema/hull.ts';
import type { FileUnits } from '../../../schema/units.ts';
import type { Finding } from '../findings/finding.ts';
import type { Form } from '../geometry/form/form.ts';
import type { Shapes } from '../geometry/shapes/shapes.ts';
import type { MeshLookup } from '../meshFiles/meshFile.ts';
import type { Steps } from '../steps/steps.ts';
import type { Syntax } from '../text/reading/syntax.ts';
import { entriesOf } from '../text/reading/values.ts';
import { checkNames, withoutRepeats } from './arrangement.ts';
import type { Boat, Waterline } from './boat.ts';
import { aboardAndAshore, withBoatOfDay } from './boatOfDay.ts';
import { checkConditions } from './checkConditions.ts';
import { checkKeys, missingSections } from './checkSections.ts';
import { checkTrials } from './checkTrials.ts';
import { changeTo, guessedUnit, valueFault } from './fault.ts';
import { formsReady } from './formsReady.ts';
import { USES, type Use } from './formUse.ts';
import { meshesInAll } from './meshesInAll.ts';
import type { OwnCondition } from './ownCondition.ts';
import type { PlacedEntry } from './placed.ts';
import { readCondition } from './readCondition.ts';
import { readBay, readCompartment, readShell, readTank } from './readHull.ts';
import type { ReadingContext, RoomLookup } from './readingContext.ts';
import { readLimits, readStock, stockDensities } from './readLimits.ts';
import { readOrigin } from './readOrigin.ts';
import { readPart } from './readPart.ts';
import { readTrial } from './readTrial.ts';
import { readUnits } from './readUnits.ts';
import { readWater } from './readWater.ts';
import {
  type KeptEntries,
  type KeptSchemas,
  nameOf,
  type SectionReader,
  sectionReader,
  unitsKey,
} from './sectionReader.ts';
import { type BoatSource, entriesIn } from './source.ts';
import { toldNow } from './toldNow.ts';
import type { Trial } from './trial.ts';
import { volumeUnit } from './volumeUnit.ts';

export interface BoatReading {
  readonly boat: Boat;
  /** The same with what its entries were read from. */
  readonly source: BoatSource;
  readonly trials: readonly Trial[];
  /** Loading conditions of the builder's own. */
  readonly conditions: readonly OwnCondition[];
  /** The file says how long the hull is. */
  readonly hasLength: boolean;
  /** The units stand under a key that nobody knows: bare numbers may be in another than the one in force. */
  readonly lacksUnits: boolean;
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

/**
 * Reads a boat from the text: every section and entry by its own schema, so that a fault costs only the entry that it is
 * in. Defaults stand in for sections that cannot be read; what is left out is named in `leftOut`.
 */
export function* boatSteps(
  syntax: Syntax,
  describer: Describer,
  kept: KeptEntries | undefined,
  { meshes, shapes }: Resources,
): Steps<BoatReading> {
  const held = meshesInAll(syntax, meshes);
  const reading = yield* readOnce(syntax, describer, { kept, meshes: held, shapes, standIn: null });
  const { length, units } = reading.boat;
  // What counts from the stern or from midships can only be placed once something stands in for the length.
  if (reading.hasLength || length === 0 || (units.origin ?? null) === null) return reading;
  return yield* readOnce(syntax, describer, { kept, meshes: held, shapes, standIn: length });
}

interface Once extends Resources {
  readonly kept: KeptEntries | undefined;
  /** What stands in for the length of a hull that does not say it, m; null as long as nothing is known. */
  readonly standIn: number | null;
}

function* readOnce(syntax: Syntax, describer: Describer, { kept, meshes, shapes, standIn }: Once): Steps<BoatReading> {
  const reader = sectionReader(syntax, describer, kept);
  const { findings, leftOut, meshNames, lists, sections } = reader.log;
  const { scale, units, schemas, made, lengthOf, waterlineOf } = readMeasures(reader, syntax, kept, standIn);
  yield;
  const stock = reader.section(() => schemas.stock, ['stock'], 'the stock', true);
  for (const key of ['lead', 'foam'] as const) {
    const density = stock?.[key]?.density;
    if (density) findings.push(...guessedUnit(density, ['stock', key, 'density']));
  }
  const around: ReadingContext = { units, scale, stock: stockDensities(stock), meshes, roomsOf: () => [], shapes };
  const unread = yield* checkKeys(syntax, describer, findings);
  leftOut.push(...unread.leftOut);
  yield;
  const name = reader.section(() => schemas.boat, ['boat'], 'the boat') ?? '';
  const waterline = waterlineOf();
  const water = reader.section(() => schemas.water, ['water'], 'the water', true);
  yield;
  const sources = { water, stock, ...(yield* readEntries(reader, schemas, around)) };
  const bays = yield* reader.list(['bays'], { what: 'bay', schema: () => schemas.bay, read: readBay }, around);
  const boat = {
    name,
    waterline,
    scale,
    units: { ...units, ...volumeUnit(sources.tanks.map(({ checked }) => checked.capacity)) },
    water: readWater(water, findings),
    shells: entriesIn(sources.shells),
    compartments: entriesIn(sources.compartments),
    tanks: entriesIn(sources.tanks),
    payload: entriesIn(sources.payload),
    ashore: entriesIn(sources.ashore),
    bays: entriesIn(bays),
    stock: readStock(stock),
    limits: readLimits(reader.section(() => schemas.limits, ['limits'], 'the limits', true)),
  };
  yield;
  const length = lengthOf();
  const whole: Boat = { ...boat, length: length ?? standIn ?? standInLength(boat, shapes), leftOut };
  const compartmentNames = entriesOf(syntax, ['hull', 'compartments']).flatMap(item => nameOf(item.value) ?? []);
  findings.push(...missingSections(syntax, length, unread), ...checkNames(whole, compartmentNames));
  const ready = readyAboard;
  const conditionKind = { what: 'condition', schema: () => schemas.condition, read: readCondition, ready };
  const conditions = checkConditions(
    entriesIn(yield* reader.list(['conditions'], conditionKind, sources.around)),
    whole,
    compartmentNames,
  );
  const trialKind = { what: 'trial', schema: () => schemas.trial, read: readTrial, ready };
  const trials = checkTrials(
    entriesIn(yield* reader.list(['trials'], trialKind, sources.around)),
    whole,
    compartmentNames,
    shapes,
  );
  yield;
  const ofDay = withBoatOfDay(sources, trials.trials);
  findings.push(...conditions.findings, ...trials.findings, ...ofDay.findings);
  return {
    boat: whole,
    source: { ...sources, boat: whole },
    trials: ofDay.trials,
    conditions: conditions.conditions,
    hasLength: length !== null,
    lacksUnits: unread.meant.includes('units'),
    findings: withoutRepeats(toldNow(findings, syntax)),
    meshNames: [...meshNames],
    kept: { lists, sections, schemas: made },
  };
}

/** How the figures of the file are read: its units, its scale, and where its places count from. */
function readMeasures(reader: SectionReader, syntax: Syntax, kept: KeptEntries | undefined, standIn: number | null) {
  const bare = readUnits(reader, syntax);
  const scale = readScale(
    reader.section(() => scaleSchema, ['scale'], 'the scale'),
    reader.log.findings,
  );
  const plain = schemasFor({ ...bare, scale }, kept);
  const lengthOf = () => reader.section(() => plain.made.length, ['hull', 'length'], 'the length')?.value ?? null;
  const waterlineOf = () =>
    readWaterline(reader.section(() => plain.made.waterline, ['hull', 'waterline'], 'the waterline'));
  const measures = () => ({ length: lengthOf() ?? standIn, waterline: waterlineOf() });
  const origin = readOrigin(reader, syntax, plain.made, measures);
  const units: FileUnits = origin ? { ...bare, origin } : bare;
  const placing = origin ? schemasFor({ ...units, scale }, kept) : plain;
  return { scale, units, schemas: placing.made, made: { inUse: placing, plain }, lengthOf, waterlineOf };
}

/** Everything that weighs or displaces, with what it was read from. */
function* readEntries({ list }: SectionReader, schemas: BoatSchemas, around: ReadingContext) {
  const shells = yield* list(
    ['hull', 'shells'],
    { what: 'shell', schema: () => schemas.shell, read: readShell, ready: readyFor(USES.shells) },
    around,
  );
  const compartments = yield* list(
    ['hull', 'compartments'],
    {
      what: 'compartment',
      schema: () => schemas.compartment,
      read: readCompartment,
      ready: readyFor(USES.compartments),
    },
    around,
  );
  const rooms = new Map<string | null, readonly Form[]>();
  const roomsOf: RoomLookup = name => {
    const known = rooms.get(name);
    if (known) return known;
    const inside = name === null ? shells : compartments.filter(({ entry }) => entry.name === name);
    const forms = inside.map(({ entry }) => entry.form);
    rooms.set(name, forms);
    return forms;
  };
  const within: ReadingContext = { ...around, roomsOf };
  return {
    shells,
    compartments,
    tanks: yield* list(
      ['hull', 'tanks'],
      { what: 'tank', schema: () => schemas.tank, read: readTank, ready: readyFor(USES.tanks) },
      within,
    ),
    ...aboardAndAshore(
      yield* list(
        ['payload'],
        { what: 'part', schema: () => schemas.part, read: readPart, ready: readyFor(USES.payload) },
        within,
      ),
    ),
    around: within,
  };
}

const readyFor =
  <T extends PlacedEntry>(use: (entry: T) => Use) =>
  (entry: T, around: ReadingContext): Steps<void> =>
    formsReady(entry, { around, ...use(entry) });

/** The same of what a condition or a trial has aboard. */
function* readyAboard(
  { aboard = [] }: { readonly aboard?: readonly PartEntry[] | undefined },
  around: ReadingContext,
): Steps<void> {
  for (const part of aboard) yield* formsReady(part, { around, ...USES.payload(part) });
}

/** The schemas for these units, those of the last reading where they serve. */
const schemasFor = (units: FileUnits, kept: KeptEntries | undefined): KeptSchemas =>
  [kept?.schemas.inUse, kept?.schemas.plain].find(had => had && unitsKey(had.units) === unitsKey(units)) ?? {
    units,
    made: boatSchemas(units),
  };

const readWaterline = (entry: { bow: { value: number }; stern: { value: number } } | null): Waterline | null =>
  entry ? { bow: entry.bow.value, stern: entry.stern.value } : null;

/** `1:60` as 1/60. */
function readScale(text: string | null, findings: Finding[]): number | null {
  if (text === null) return null;
  const parts = /^1\s*[:/]\s*(\d+(?:\.\d+)?)$/.exec(text);
  const ratio = parts ? Number(parts[1]) : 0;
  if (ratio >= 0.1 && ratio <= 100_000) return 1 / ratio;
  const meant = /(?<!\d\.?)(\d+(?:\.\d+)?)\D*$/.exec(text)?.[1];
  const right = meant === undefined ? null : `1:${meant}`;
  const message = `Expected a scale such as 1:60, but this says “${text}”.${right ? ` Did you mean ${right}?` : ''}`;
  findings.push(valueFault('wrong-value', ['scale'], message, { mends: changeTo(['scale'], right) }));
  return null;
}

/**
 * With no length yet the aftmost end of what is in the file stands in, so that a half-typed file still floats; where
 * nothing lies aft of the bow tip, as far as it reaches forward. Zero where there is nothing.
 */
function standInLength(boat: Pick<Boat, 'shells' | 'compartments' | 'payload' | 'units'>, shapes: Shapes): number {
  const spans = [...boat.shells, ...boat.compartments].map(entry => shapes.boundsOf(entry.form));
  const all = [...spans, ...boat.payload];
  const aftmost = Math.max(0, ...all.map(({ to }) => to[0]));
  const reach = aftmost || Math.max(0, ...all.map(({ from }) => -from[0]));
  // From midships it reaches half as far.
  return boat.units.origin?.stations.endsWith('midships') ? 2 * reach : reach;
}
