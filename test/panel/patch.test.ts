import fc from 'fast-check';
import { expect, test } from 'vitest';
import { joined, type Patch, patchesFor } from '../../client/panel/patch.ts';
import type { SheetPicture } from '../../server/editor/protocol.ts';

const picture = (id: string, svg = `<svg id="${id}"/>`, description = ''): SheetPicture => ({
  id,
  title: id,
  description,
  svg,
});

const kinds = (patches: readonly Patch[]): readonly string[] => patches.map(({ kind }) => kind);

test('what is the same is not touched; what is drawn anew, told anew, added or gone is', () => {
  const before = [picture('side'), picture('plan'), picture('section'), picture('old')];
  const after = [
    picture('side'),
    picture('plan', '<svg/>'),
    picture('new'),
    picture('section', undefined, 'said anew'),
  ];
  const { gone, patches } = patchesFor(before, after);
  expect(gone).toEqual(['old']);
  expect(kinds(patches)).toEqual(['keep', 'redraw', 'add', 'words']);
});

test('nothing to begin with, and the same twice', () => {
  expect(patchesFor([], [])).toEqual({ gone: [], patches: [] });
  const one = [picture('side')];
  expect(kinds(patchesFor(one, one).patches)).toEqual(['keep']);
});

test('any pictures become any others', () => {
  const pictures = fc.uniqueArray(
    fc.record({
      id: fc.constantFrom('a', 'b', 'c', 'd'),
      title: fc.constantFrom('1', '2'),
      svg: fc.constantFrom('x', 'y'),
    }),
    { selector: ({ id }) => id },
  );
  fc.assert(
    fc.property(pictures, pictures, (some, others) => {
      const [before, after] = [some, others].map(list => list.map(each => ({ ...each, description: '' }))) as [
        SheetPicture[],
        SheetPicture[],
      ];
      const { gone, patches } = patchesFor(before, after);
      const page = new Map(before.filter(({ id }) => !gone.includes(id)).map(each => [each.id, { ...each }]));
      const order = patches.map(patch => {
        if (patch.kind === 'keep') return patch.id;
        const { picture: next } = patch;
        const was = page.get(next.id);
        page.set(next.id, patch.kind === 'words' ? { ...next, svg: was!.svg } : next);
        return next.id;
      });
      expect(order.map(id => page.get(id))).toEqual(after);
      expect(page.size).toBe(after.length);
    }),
  );
});

test('some that come first take their places, and the others wait', () => {
  const shown = [picture('side'), picture('lever'), picture('plan')];
  const some = [picture('plan', '<svg/>'), picture('side', '<svg/>'), picture('new')];
  expect(joined(shown, some)).toEqual({ pictures: [some[1], shown[1], some[0], some[2]], outdated: ['lever'] });
  expect(joined([], some)).toEqual({ pictures: some, outdated: [] });
});
