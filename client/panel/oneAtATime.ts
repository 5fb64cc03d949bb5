/** Sends one wish at a time; of those that come up meanwhile only the last is sent, once the answer is there. */
export interface OneAtATime<T> {
  want(wish: T): void;
  answered(): void;
  /** Forgets what waits, and the answer that is still to come. */
  forget(): void;
}

export function oneAtATime<T>(send: (wish: T) => void): OneAtATime<T> {
  let isWaiting = false;
  let next: { readonly wish: T } | null = null;
  const sendNow = (wish: T): void => {
    isWaiting = true;
    next = null;
    send(wish);
  };
  return {
    want(wish) {
      if (isWaiting) next = { wish };
      else sendNow(wish);
    },
    answered() {
      isWaiting = false;
      if (next) sendNow(next.wish);
    },
    forget() {
      isWaiting = false;
      next = null;
    },
  };
}
