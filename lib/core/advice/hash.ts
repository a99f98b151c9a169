/**
 * A stable 32-bit hash of a text: FNV-1a over its UTF-16 code units, then the finaliser of MurmurHash3 (both in the
 * public domain), because bare FNV-1a leaves the low bits of short texts poorly mixed and the index uses them.
 *
 * Stored with every case, so its values must never change without a new `FEATURE_VERSION`.
 */
export function hash32(text: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) | 0;
}
