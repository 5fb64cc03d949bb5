import { boatSchema, jsonSchemaOf } from '../../schema/boatFile.ts';
import type { Describer } from '../../schema/describe.ts';
import { type BoatReading, boatSteps, type Resources } from '../../server/core/boat/readBoat.ts';
import type { KeptEntries } from '../../server/core/boat/sectionReader.ts';
import type { Afloat } from '../../server/core/conditions/energy.ts';
import { type OtherEquilibrium, otherEquilibriumSteps } from '../../server/core/conditions/otherEquilibria.ts';
import { type RightingCurve, rightingSteps } from '../../server/core/conditions/rightingLever.ts';
import type { Polyhedron } from '../../server/core/geometry/form/form.ts';
import { sectionsFormSteps } from '../../server/core/geometry/mesh/sections.ts';
import { createShapes } from '../../server/core/geometry/shapes/shapes.ts';
import { referenceSteps } from '../../server/core/report/reference.ts';
import { finish } from '../../server/core/steps/steps.ts';
import { lineStartsOf } from '../../server/core/text/reading/lines.ts';
import { type Syntax, wholeSteps } from '../../server/core/text/reading/syntax.ts';

/* What the program does in steps, done at once. */

export const readBoat = (
  syntax: Syntax,
  describer: Describer,
  kept?: KeptEntries,
  resources: Resources = { meshes: () => null, shapes: createShapes() },
): BoatReading => finish(boatSteps(syntax, describer, kept, resources));

/** A text that is not put together from pieces. */
export const readWhole = (text: string): Syntax => finish(wholeSteps(text, lineStartsOf(text)));

export const referenceText = (describer: Describer): string => finish(referenceSteps(describer));

/** The published schema. */
export const boatJsonSchema = () => jsonSchemaOf(boatSchema());

/** The righting lever over all heels, and the range of stability. */
export const rightingCurve = (boat: Afloat): RightingCurve => finish(rightingSteps(boat));

/** Stable attitudes other than the one known. */
export const otherEquilibria = (...boat: Parameters<typeof otherEquilibriumSteps>): readonly OtherEquilibrium[] =>
  finish(otherEquilibriumSteps(...boat));

/** A table of offsets as a body. */
export const sectionsForm = (...table: Parameters<typeof sectionsFormSteps>): Polyhedron =>
  finish(sectionsFormSteps(...table));
