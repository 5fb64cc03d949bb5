import { describe, expect, it } from 'vitest';
import { axesText, readAxes } from '../../schema/meshAxes.ts';

describe('axes of a mesh', () => {
  it.each([
    ['x y z', 'x y z'],
    ['-x -y z', '-x -y z'],
    ['+Y, -X, Z', 'y -x z'],
    ['  z  x  y ', 'z x y'],
  ])('%s', (written, shown) => {
    const read = readAxes(written);
    expect(read.ok && axesText(read.value)).toBe(shown);
  });

  it.each([
    ['x y', 'this names 2', ''],
    ['x y z x', '“x” stands there twice', 'x'],
    ['x y w', '“w” is none of x, y, z', 'w'],
    ['xyz', '“xyz” is none of x, y, z', 'xyz'],
    ['x -x z', '“-x” stands there twice', '-x'],
    ['', 'this names 0', ''],
  ])('“%s” is none', (written, says, marks) => {
    const read = readAxes(written);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.slip.message).toContain('aft, to starboard and up');
    expect(read.slip.message).toContain(says);
    expect(written.slice(read.slip.start, read.slip.end)).toBe(marks);
  });

  it('a list is none', () => {
    expect(readAxes(['x', 'y', 'z']).ok).toBe(false);
  });
});
