import { launchBrowser } from './session.ts';

/** Text stays sharp at this, in half the bytes of a PNG: the pictures travel with the extension. */
const QUALITY = 0.75;

/** A PNG as WebP, by the browser’s own encoder. */
export async function webpOf(png: Buffer): Promise<Buffer> {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    const address = await page.evaluate<string>(`(async () => {
      const image = new Image();
      image.src = 'data:image/png;base64,${png.toString('base64')}';
      await image.decode();
      const canvas = document.createElement('canvas');
      canvas.width = image.width;
      canvas.height = image.height;
      canvas.getContext('2d').drawImage(image, 0, 0);
      return canvas.toDataURL('image/webp', ${QUALITY});
    })()`);
    return Buffer.from(address.split(',')[1]!, 'base64');
  } finally {
    await browser.close();
  }
}
