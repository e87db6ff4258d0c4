// A photo as large as it is kept beside the job, before it goes on its way: on a bad network the whole one would be minutes.
// HEIC and AVIF become JPEG where this browser reads them, and go nowhere where it does not: the program reads neither.
// What else this browser cannot read goes as it is, and the program says what is wrong with it.

const LONGEST = 1600; // pixels, as photos.py keeps them
export const FOR_A_CODE = 3200; // pixels: a code on a label is small in its photo
const SMALL = 500_000; // under this nothing is gained [bytes]
const QUALITY = .9;
const HEAD = 1 << 17; // what a JPEG begins with: a preview in it has an end of its own [bytes]

/** A photo that is not sent; its message is the sentence of the program. */
export class NotSent extends Error {}

/** The photo as it is sent; raises NotSent where the program would not take it. */
export async function smaller(picture, longest = LONGEST) {
  const { unread, tooLarge, largest } = document.querySelector("main").dataset;
  const isBoxed = await isInBox(picture);
  const made = isBoxed || picture.size > SMALL && !await isCutOff(picture) ? await drawnAnew(picture, longest) : null;
  if (isBoxed && !made) throw new NotSent(unread);
  const sent = made && (isBoxed || made.size < picture.size) ? made : picture;
  if (sent.size > Number(largest)) throw new NotSent(tooLarge);
  return sent;
}

/** The photo as a JPEG; nothing where this browser cannot read it. */
async function drawnAnew(picture, longest) {
  const address = URL.createObjectURL(picture);
  try {
    const seen = new Image();
    seen.src = address;
    await seen.decode();
    const scale = Math.min(1, longest / Math.max(seen.naturalWidth, seen.naturalHeight));
    const sheet = document.createElement("canvas");
    sheet.width = Math.round(seen.naturalWidth * scale);
    sheet.height = Math.round(seen.naturalHeight * scale);
    sheet.getContext("2d").drawImage(seen, 0, 0, sheet.width, sheet.height);
    return await new Promise((done) => sheet.toBlob(done, "image/jpeg", QUALITY));
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Whether it is in the container of HEIC and AVIF, as photos.py knows it. */
async function isInBox(picture) {
  return new TextDecoder().decode(await picture.slice(4, 8).arrayBuffer()) === "ftyp";
}

/** A JPEG that came to no end: the browser would draw what there is of it, and nobody be told. */
async function isCutOff(picture) {
  const bytes = new Uint8Array(await picture.arrayBuffer());
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return false;
  for (let at = bytes.length - 2; at > HEAD; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return false;
  return true;
}
