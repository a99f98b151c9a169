import sharp from "sharp";

/** A JPEG of one colour, 64 by 48 pixels. */
export async function smallPhoto(colour: string): Promise<Buffer> {
  return sharp({ create: { width: 64, height: 48, channels: 3, background: colour } })
    .jpeg()
    .toBuffer();
}

/** A JPEG as a phone makes it: stored lying down with a note to turn it, and with the place where it was taken. */
export async function phonePhoto(): Promise<Buffer> {
  return sharp({ create: { width: 64, height: 48, channels: 3, background: "rgb(10, 120, 200)" } })
    .jpeg()
    .withExif({
      IFD0: { Make: "Widgeon Phones", Model: "W1" },
      IFD3: {
        GPSLatitudeRef: "N",
        GPSLatitude: "48/1 12/1 30/1",
        GPSLongitudeRef: "E",
        GPSLongitude: "16/1 22/1 15/1",
      },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer();
}
