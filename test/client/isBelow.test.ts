import { describe, expect, it } from 'vitest';
import { isBelow } from '../../client/isBelow.ts';

const at = (path: string, scheme = 'file', authority = '') => ({ scheme, authority, path });

describe('a mesh file lies below the folder of the boat', () => {
  it.each([
    '/boats/hull.stl',
    '/boats/forms/hull.stl',
    '/boats/forms/../hull.stl',
    '/boats/./hull.stl',
    '/boats/..hull.stl',
  ])('%s', path => {
    expect(isBelow(at(path), at('/boats'))).toBe(true);
    expect(isBelow(at(path), at('/boats/'))).toBe(true);
  });
  it.each([
    '/boats/../hull.stl',
    '/boats/forms/../../secret/hull.stl',
    '/boats/../boats2/hull.stl',
    '/boats2/hull.stl',
    '/hull.stl',
    '/boats',
    '/../boats',
  ])('%s does not', path => {
    expect(isBelow(at(path), at('/boats'))).toBe(false);
  });
  it.each([
    ['/c:/boats/hull.stl', '/C:/boats', true],
    ['/C:/boats/forms/hull.stl', '/c:/boats/', true],
    ['/d:/boats/hull.stl', '/c:/boats', false],
    ['/c:/boats/..\\hull.stl', '/c:/boats', false],
    ['/c:/boats/forms\\..\\..\\secret\\hull.stl', '/c:/boats', false],
    ['/c:/boats/../../d:/boats/hull.stl', '/c:/boats', false],
    ['/c:/hull.stl', '/c:', true],
    ['/c:/Boats/hull.stl', '/c:/boats', false],
  ])('on Windows: %s below %s is %s', (file, folder, is) => {
    expect(isBelow(at(file), at(folder))).toBe(is);
  });
  it.each([
    ['HOST', '/Boats/hull.stl', 'host', '/boats', true],
    ['host', '/boats/forms/hull.stl', 'Host', '/BOATS/', true],
    ['host', '/boats/Tern/hull.stl', 'host', '/Boats/Tern', true],
    ['host', '/boats/tern/hull.stl', 'host', '/boats/Tern', false],
    ['host', '/boats/../Secret/hull.stl', 'host', '/boats', false],
    ['other', '/boats/hull.stl', 'host', '/boats', false],
    ['', '/Boats/hull.stl', '', '/boats', false],
  ])('shared by a computer, as on Windows: //%s%s below //%s%s is %s', (host, file, other, folder, is) => {
    expect(isBelow(at(file, 'file', host), at(folder, 'file', other))).toBe(is);
  });
  it('where only capitals tell places apart', () => {
    expect(isBelow(at('/boats/hull.stl', 'vscode-remote', 'A'), at('/boats', 'vscode-remote', 'a'))).toBe(false);
  });
  it('on the same computer and by the same way only', () => {
    expect(isBelow(at('/boats/hull.stl', 'vscode-remote', 'a'), at('/boats', 'vscode-remote', 'b'))).toBe(false);
    expect(isBelow(at('/boats/hull.stl', 'https'), at('/boats'))).toBe(false);
  });
});
