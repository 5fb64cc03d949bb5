/** What stands as `explained` in a trial that changed figures of the file account for. */
export const CHANGED = 'changed figures';
