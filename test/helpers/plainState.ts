/** How the boat lies in numbers alone: bodies that were made twice are never equal. */
export const plainState = <T extends object>(state: T): Omit<T, 'floating' | 'judged'> => {
  const { floating: _, judged: __, ...figures } = state as T & { floating?: unknown; judged?: unknown };
  return figures as Omit<T, 'floating' | 'judged'>;
};
