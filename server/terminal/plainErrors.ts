/** Why something is not done, in words for the user. */
export class RefusedFile extends Error {}

/** What the system says of a file, in plain words. */
const PLAIN: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EEXIST: 'there is such a file already',
  ENOTDIR: 'there is no such folder',
  EISDIR: 'this is a folder',
  EACCES: 'you have no permission for this',
  EPERM: 'you have no permission for this',
  EROFS: 'it lies on a disk that cannot be written',
  ENOSPC: 'the disk is full',
  EDQUOT: 'there is no room left for you on the disk',
  EFBIG: 'it becomes too large for the disk',
  EIO: 'the disk does not answer',
  EBUSY: 'another program is using it',
  ETXTBSY: 'another program is using it',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'its name is too long',
  EMFILE: 'too many files are open',
  EPIPE: 'what was to read it has ended',
  ERR_INVALID_ARG_VALUE: 'this is no name of a file',
};

/** Does something with files; what goes wrong is thrown again in plain words. */
export function plainly<T>(run: () => T): T {
  try {
    return run();
  } catch (problem) {
    throw problem instanceof RefusedFile ? problem : new RefusedFile(inPlainWords(problem));
  }
}

/** The reason of a failure without the machine's own words, as far as it is known. */
export function inPlainWords(problem: unknown): string {
  const code = problem instanceof Error && 'code' in problem ? String(problem.code) : '';
  return PLAIN[code] ?? (problem instanceof Error ? problem.message : String(problem));
}
