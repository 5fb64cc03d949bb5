/** Words that begin a sentence; a quoted name stays as it is. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
