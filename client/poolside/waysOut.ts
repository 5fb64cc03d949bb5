/** How the day's trials leave the phone. */

/** False where the browser gives no clipboard, as some do for a page from the memory. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

/** The phone's own way of sharing a text; null where it has none. */
export function sharer(): ((title: string, text: string) => Promise<boolean>) | null {
  if (typeof navigator.share !== 'function') return null;
  return async (title, text) => {
    try {
      await navigator.share({ title: `${title}: trials`, text });
      return true;
    } catch {
      // Whoever shares may think better of it.
      return false;
    }
  };
}

/** Among the phone's downloads. */
export function saveText(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'text/yaml' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads it after the click.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
