import { balanceSection } from './balanceChecks.ts';
import type { Section } from './check.ts';
import { cutSections } from './cutChecks.ts';
import { floatSections } from './floatChecks.ts';
import { hullSections } from './hullChecks.ts';
import { librarySection } from './libraryChecks.ts';
import { solidSections } from './solidChecks.ts';
import { submarineSections } from './submarineChecks.ts';
import { tankSections } from './tankChecks.ts';
import { unitSections } from './unitChecks.ts';
import { waterSections } from './waterChecks.ts';

/** All checks, in the order of the table. */
export async function allSections(): Promise<readonly Section[]> {
  return [
    ...waterSections,
    ...unitSections,
    ...solidSections,
    ...cutSections,
    await librarySection(),
    ...hullSections,
    ...floatSections,
    balanceSection(),
    ...tankSections,
    ...submarineSections,
  ];
}
