import sharp from "sharp";
import { attachFile, listAttachments } from "#lib/services/attachments/index.ts";
import type { Ctx, MemberActor } from "#lib/services/context.ts";
import { boardPicture, PICTURED_BOARDS } from "#seed/pictures/index.ts";
import type { SeedBoard } from "#seed/shapes.ts";

/** Dots per inch for turning a drawing into a picture: about what a phone's photo of a whole board has. */
const DENSITY = 144;

/** Draws the boards that have a picture and puts it on their records. A board that has one already is passed over. */
export async function loadPictures(ctx: Ctx, boards: readonly SeedBoard[], photographer: MemberActor): Promise<void> {
  for (const board of boards.filter((one) => PICTURED_BOARDS.includes(one.slug))) {
    const record = await ctx.db.board.findUniqueOrThrow({ where: { slug: board.slug }, select: { id: true } });
    const there = await listAttachments(ctx, "board", record.id);
    if (there.length > 0) continue;
    const bytes = await sharp(Buffer.from(boardPicture(board)), { density: DENSITY })
      .png()
      .toBuffer();
    const input = {
      kind: "board",
      record: record.id,
      caption: `${board.name}, component side, drawn from the club's own board`,
    };
    await attachFile({ ...ctx, actor: photographer }, input, { name: `${board.slug}.png`, bytes });
  }
}
