/** Size in pixels as seen, after the orientation that the file asks for. */
export interface PictureSize {
  readonly type: "png" | "jpeg";
  readonly width: number;
  readonly height: number;
  /** EXIF orientation 1 to 8; 1 for PNG and where the file does not say. */
  readonly orientation: number;
}

/** Whether the bytes are a picture that can be printed. */
export function fitsPicture(bytes: Uint8Array): boolean {
  return pictureSize(bytes) !== undefined;
}

/**
 * Reads the size of a PNG (W3C PNG, IHDR) or JPEG (ITU-T T.81, frame header) picture and its EXIF orientation (JEITA CP-3451,
 * tag 0x0112). Undefined for anything else or a file that ends too early.
 */
export function pictureSize(bytes: Uint8Array): PictureSize | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (view.getUint32(0) === 0x89504e47 && view.getUint32(4) === 0x0d0a1a0a) {
      const width = view.getUint32(16);
      const height = view.getUint32(20);
      return width > 0 && height > 0 ? { type: "png", width, height, orientation: 1 } : undefined;
    }
    if (view.getUint16(0) === 0xffd8) return jpegSize(view);
  } catch {
    // The file ends inside a header: no picture.
  }
  return undefined;
}

function jpegSize(view: DataView): PictureSize | undefined {
  let orientation = 1;
  let at = 2;
  for (;;) {
    while (view.getUint8(at) === 0xff && view.getUint8(at + 1) === 0xff) at++;
    const marker = view.getUint16(at);
    const length = view.getUint16(at + 2);
    if (marker === 0xffe1) orientation = exifOrientation(view, at + 4, length - 2) ?? orientation;
    const frame = marker >= 0xffc0 && marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker);
    if (frame) {
      const height = view.getUint16(at + 5);
      const width = view.getUint16(at + 7);
      if (width === 0 || height === 0) return undefined;
      const turned = orientation >= 5;
      return { type: "jpeg", width: turned ? height : width, height: turned ? width : height, orientation };
    }
    if (marker < 0xffc0 || marker === 0xffda) return undefined;
    at += 2 + length;
  }
}

function exifOrientation(view: DataView, at: number, length: number): number | undefined {
  if (length < 14 || view.getUint32(at) !== 0x45786966) return undefined;
  const tiff = at + 6;
  const little = view.getUint16(tiff) === 0x4949;
  const directory = tiff + view.getUint32(tiff + 4, little);
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (view.getUint16(entry, little) !== 0x0112) continue;
    const value = view.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : undefined;
  }
  return undefined;
}
