/** What an address says of where a file lies. */
export interface Address {
  readonly scheme: string;
  readonly authority: string;
  readonly path: string;
}

/**
 * Whether a file lies below a folder, once the steps upward in its path are taken. As on Windows a backslash parts steps too,
 * and a drive, or a computer and what it shares (`//HOST/Share/boats`), is the same in capitals and small letters.
 */
export function isBelow(file: Address, folder: Address): boolean {
  const top = stepsOf(folder);
  const steps = stepsOf(file);
  return (
    file.scheme === folder.scheme &&
    hostOf(file) === hostOf(folder) &&
    steps.length > top.length &&
    top.every((step, i) => step === steps[i])
  );
}

/** Editors in the cloud and on other computers tell places apart by names of their own, where capitals may count. */
const isShared = ({ scheme, authority }: Address): boolean => scheme === 'file' && authority !== '';

const hostOf = (address: Address): string => (isShared(address) ? address.authority.toLowerCase() : address.authority);

function stepsOf(address: Address): readonly string[] {
  const steps: string[] = [];
  for (const step of address.path.split(/[/\\]/)) {
    if (step === '..') steps.pop();
    else if (step !== '' && step !== '.') steps.push(/^[A-Z]:$/.test(step) ? step.toLowerCase() : step);
  }
  const [share, ...below] = steps;
  return share !== undefined && isShared(address) ? [share.toLowerCase(), ...below] : steps;
}
