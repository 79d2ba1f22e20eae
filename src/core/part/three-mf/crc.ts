const table = Int32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/**
 * Check sum of a zip entry (CRC-32, reflected polynomial 0xEDB88320), continued from the sum of the bytes before.
 * @example
 * crc32(new TextEncoder().encode("123456789")) // => 3421780262
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let rest = ~before;
  for (let i = 0; i < bytes.length; i++) rest = (rest >>> 8) ^ table[(rest ^ bytes[i]!) & 255]!;
  return ~rest >>> 0;
}
