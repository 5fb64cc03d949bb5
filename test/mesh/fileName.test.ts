import { describe, expect, it } from 'vitest';
import { normalName } from '../../server/core/meshFiles/fileName.ts';

describe('names of mesh files', () => {
  it.each([
    ['hull.stl', 'hull.stl'],
    [' Hull.STL ', 'Hull.STL'],
    ['./forms/hull.3mf', 'forms/hull.3mf'],
    ['forms\\hull.stl', 'forms/hull.stl'],
    ['forms//old/../hull.stl', 'forms/hull.stl'],
    ['../forms/hull.stl', '../forms/hull.stl'],
    ['../../hull.stl', '../../hull.stl'],
    ['forms/../../hull.stl', '../hull.stl'],
  ])('%s is %s', (written, name) => {
    expect(normalName(written)).toEqual({ ok: true, name });
  });

  it.each([
    '/etc/hull.stl',
    'C:\\boats\\hull.stl',
    'c:/hull.stl',
    '\\\\shed\\hull.stl',
    'file:///hull.stl',
    'https://example.org/hull.stl',
    '~/hull.stl',
  ])('%s is a place on one computer', written => {
    const name = normalName(written);
    expect(name.ok).toBe(false);
    if (!name.ok) expect(name.message).toContain('Copy the file beside the boat file');
  });

  it.each(['hull', 'hull.step', 'hull.stl.txt', ''])('“%s” ends like no mesh', written => {
    const name = normalName(written);
    expect(name.ok).toBe(false);
    if (!name.ok) expect(name.message).toContain('Expected an STL or 3MF file');
  });
});
