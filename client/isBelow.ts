/** What an address says of where a file lies. */
export interface Address {
  readonly scheme: string;
  readonly authority: string;
  readonly path: string;
}

/**
 * Whether a file lies below a folder, once the steps upward in its path are taken. As on Windows a backslash parts steps too,
 * and a drive is the same by either letter.
 */
export function isBelow(file: Address, folder: Address): boolean {
  const top = stepsOf(folder.path);
  const steps = stepsOf(file.path);
  return (
    file.scheme === folder.scheme &&
    file.authority === folder.authority &&
    steps.length > top.length &&
    top.every((step, i) => step === steps[i])
  );
}

function stepsOf(path: string): readonly string[] {
  const steps: string[] = [];
  for (const step of path.split(/[/\\]/)) {
    if (step === '..') steps.pop();
    else if (step !== '' && step !== '.') steps.push(/^[A-Z]:$/.test(step) ? step.toLowerCase() : step);
  }
  return steps;
}
