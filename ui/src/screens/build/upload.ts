/** Reads a photo, turns it upright, makes it small and free of what the camera noted, and stores it. */

import type { Photo } from "../../api.ts";
import { ask, Trouble } from "../../server/client.ts";
import { words } from "../../words.ts";

const longest = 2048; // px, of a side; the server keeps no more

/** upload stores the file as a photo. It throws a Trouble. */
export async function upload(file: File): Promise<Photo> {
  return ask("POST /api/photos", { in: await small(file) });
}

async function small(file: File): Promise<Blob> {
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
