// A photo as large as it is kept beside the job, before it goes on its way: on a bad network the whole one would be minutes.
// What this browser cannot read goes as it is, and the program says what is wrong with it.

const LONGEST = 1600; // pixels, as photos.py keeps them
export const FOR_A_CODE = 3200; // pixels: a code on a label is small in its photo
const SMALL = 500_000; // under this nothing is gained [bytes]
const QUALITY = .9;
const HEAD = 1 << 17; // what a JPEG begins with: a preview in it has an end of its own [bytes]

export async function smaller(picture, longest = LONGEST) {
  if (picture.size < SMALL || await isCutOff(picture)) return picture;
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
    const made = await new Promise((done) => sheet.toBlob(done, "image/jpeg", QUALITY));
    return made && made.size < picture.size ? made : picture;
  } catch {
    return picture;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** A JPEG that came to no end: the browser would draw what there is of it, and nobody be told. */
async function isCutOff(picture) {
  const bytes = new Uint8Array(await picture.arrayBuffer());
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return false;
  for (let at = bytes.length - 2; at > HEAD; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return false;
  return true;
}
