import { type Fetched, type MeshFile, meshFrom, meshInSteps } from '../service/meshes.ts';

/** Mesh files of the workspace, loaded once through the editor and kept until they change. */
export interface MeshStore {
  /** The file by its name from the folder of a boat file; null while it is being loaded. */
  lookup(boatUri: string, name: string): MeshFile | null;
  /** Forgets a file that changed; true when it was known. */
  forget(uri: string): boolean;
  /** Forgets every file but those that these boat files name. */
  keepOnly(used: readonly { readonly boatUri: string; readonly names: readonly string[] }[]): void;
}

/**
 * `fetch` brings a file's bytes; `arrived` is told when a file that was asked for is there. It is read in steps,
 * with a `pause` between two of them, in which others are heard.
 */
export function createMeshStore(
  fetch: (uri: string, boatUri: string) => Promise<Fetched>,
  arrived: (uri: string) => void,
  pause: () => Promise<void> = () => Promise.resolve(),
): MeshStore {
  const files = new Map<string, MeshFile | null>();
  const load = async (uri: string, boatUri: string): Promise<void> => {
    const key = keyOf(uri);
    files.set(key, null);
    const file = await fetch(uri, boatUri).then(
      fetched => meshOf(fetched, pause),
      (problem: unknown) => meshFrom({ status: 'unreadable', problem: String(problem) }),
    );
    // Forgotten while it was on its way: what arrived may be the old one.
    if (!files.has(key)) return;
    files.set(key, file);
    arrived(uri);
  };
  return {
    lookup(boatUri, name) {
      // The editor would refuse it too: neither relies on the other.
      if (leadsUp(name)) return meshFrom({ status: 'outside' });
      const uri = uriBeside(boatUri, name);
      if (uri === null) return meshFrom({ status: 'missing' });
      if (!files.has(keyOf(uri))) void load(uri, boatUri);
      return files.get(keyOf(uri)) ?? null;
    },
    forget: uri => files.delete(keyOf(uri)),
    keepOnly(used) {
      const uris = used.flatMap(({ boatUri, names }) => names.map(name => uriBeside(boatUri, name) ?? ''));
      const kept = new Set(uris.map(keyOf));
      for (const key of [...files.keys()]) if (!kept.has(key)) files.delete(key);
    },
  };
}

/** Editors differ in what they escape in an address: without escapes the same file has one key. */
function keyOf(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}

/** Out of the folder of the boat file; a step of dots in escapes stays escaped, and is a name like any other. */
const leadsUp = (name: string): boolean => name.split('/').includes('..');

/**
 * The address of a file named from the boat file's folder; null for a boat file that lies nowhere yet. Whether a
 * link leads out of there is for the editor to find out.
 */
function uriBeside(boatUri: string, name: string): string | null {
  if (boatUri.startsWith('untitled:')) return null;
  const steps = boatUri.split('/').slice(0, -1);
  // Half a character, which no address can hold, is one that no file has.
  const whole = name.replace(/\p{Surrogate}/gu, '\ufffd');
  return [...steps, ...whole.split('/').map(encodeURIComponent)].join('/');
}

async function meshOf(fetched: Fetched, pause: () => Promise<void>): Promise<MeshFile> {
  if (fetched.status !== 'read') return meshFrom(fetched);
  const reading = meshInSteps(fetched.bytes);
  // Ends: a step is a stretch of work, and the work ends.
  while (!reading.step()) await pause();
  return reading.all();
}
