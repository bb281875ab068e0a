/** Stores a photo: JPEG and PNG as they are, since the server turns, shrinks and clears them and reads the lens. */

import type { Photo } from "../../api.ts";
import { ask, Trouble } from "../../server/client.ts";
import { words } from "../../words.ts";

const longest = 2048; // px, of a side; the server keeps no more
const taken = 25 * 2 ** 20; // bytes, that the server takes
const kinds = ["image/jpeg", "image/png"];

/** upload stores the file as a photo. It throws a Trouble. */
export async function upload(file: File): Promise<Photo> {
  return ask("POST /api/photos", { in: kinds.includes(file.type) && file.size <= taken ? file : await redrawn(file) });
}

/** redrawn returns any other picture that the browser can read as a JPEG, upright and small. */
async function redrawn(file: File): Promise<Blob> {
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw new Trouble({ code: "unusable", message: words.build.notPhoto });
  }
  const shrink = Math.min(1, longest / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(image.width * shrink);
  canvas.height = Math.round(image.height * shrink);
  const paper = canvas.getContext("2d")!;
  paper.imageSmoothingQuality = "high";
  paper.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", 0.9));
  if (!blob) throw new Trouble({ code: "unusable", message: words.build.notPhoto });
  return blob;
}
