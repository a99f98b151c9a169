import { z } from "zod";

export const ProseInput = z.strictObject({ text: z.string().max(100_000, "At most 100,000 characters.") });
