import { describe, expect, test } from 'vitest';
import { createMeshStore } from '../../server/editor/meshStore.ts';

/** What the store asks the editor for; nothing ever comes. */
function asking(): { readonly asked: string[]; readonly store: ReturnType<typeof createMeshStore> } {
  const asked: string[] = [];
  const store = createMeshStore(
    uri => {
      asked.push(uri);
      return new Promise(() => {});
    },
    () => {},
  );
  return { asked, store };
}

describe('addresses of mesh files', () => {
  test.each([
    ['hull.stl', 'file:///home/boats/hull.stl'],
    ['forms/hull 2.stl', 'file:///home/boats/forms/hull%202.stl'],
    ['%2e%2e/hull.stl', 'file:///home/boats/%252e%252e/hull.stl'],
    ['bö#?.stl', 'file:///home/boats/b%C3%B6%23%3F.stl'],
  ])('%s', (name, uri) => {
    const { asked, store } = asking();
    expect(store.lookup('file:///home/boats/tern.boat.yaml', name)).toBeNull();
    expect(asked).toEqual([uri]);
  });

  test.each(['../hull.stl', 'forms/../../hull.stl', '../boats/hull.stl'])('%s is not even asked for', name => {
    const { asked, store } = asking();
    expect(store.lookup('file:///home/boats/tern.boat.yaml', name)).toMatchObject({ code: 'mesh-outside' });
    expect(asked).toEqual([]);
  });

  test('a file is asked for once, and again after it changed, however its address is escaped', () => {
    const { asked, store } = asking();
    const look = () => store.lookup('vscode-vfs://host/a/tern.boat.yaml', "hull's (2).stl");
    look();
    look();
    expect(asked).toHaveLength(1);
    expect(store.forget('vscode-vfs://host/a/hull%27s%20%282%29.stl')).toBe(true);
    look();
    expect(asked).toHaveLength(2);
    expect(store.forget('vscode-vfs://host/a/other.stl')).toBe(false);
  });

  test('a file that no open boat names any more is let go, and asked for again when one does', () => {
    const { asked, store } = asking();
    const boatUri = 'file:///home/boats/tern.boat.yaml';
    store.lookup(boatUri, 'hull.stl');
    store.lookup(boatUri, 'sail (2).stl');
    store.keepOnly([{ boatUri, names: ['sail (2).stl'] }]);
    store.lookup(boatUri, 'sail (2).stl');
    expect(asked).toHaveLength(2);
    store.lookup(boatUri, 'hull.stl');
    expect(asked).toHaveLength(3);
    store.keepOnly([]);
    expect(store.forget('file:///home/boats/hull.stl')).toBe(false);
  });

  test('a boat file that is saved nowhere has no files beside it', () => {
    const { asked, store } = asking();
    expect(store.lookup('untitled:Untitled-1', 'hull.stl')).toMatchObject({ code: 'mesh-missing' });
    expect(asked).toEqual([]);
  });
});
