import { PLACEMENTS } from '../geometry/shapes/shapes.ts';
import type { Steps } from '../steps/steps.ts';
import type { PlacedEntry } from './placed.ts';
import { meshReady } from './placingMesh.ts';
import { sectionsReady } from './placingSections.ts';
import type { Setting } from './readingContext.ts';

/** Makes in steps what it takes long to make of the forms of an entry, so that it is at hand when the entry is read. */
export function* formsReady(entry: PlacedEntry, use: Pick<Setting, 'around' | 'use' | 'endsClosed'>): Steps<void> {
  // No more than are remembered.
  for (const form of (entry.forms ?? [entry]).slice(0, PLACEMENTS)) {
    if (form.mesh) yield* meshReady(form, form.mesh, use);
    if (form.sections) yield* sectionsReady(form, form.sections, use);
  }
}
