export { addDocument, attachFile, detachFile, listAttachments, removeDocument, type AttachedView } from "./attach.ts";
export { MOST_FILE_BYTES, MOST_PHOTO_BYTES } from "./schema.ts";
export { openAttachment, type ServedFile } from "./serve.ts";
