const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** Base64 by RFC 4648 with padding; written out because Node and the web name no common function for bytes. */
export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const given = bytes.length - i;
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const digit = (shift: number): string => alphabet.charAt((three >> shift) & 63);
    parts.push(digit(18), digit(12), given > 1 ? digit(6) : "=", given > 2 ? digit(0) : "=");
  }
  return parts.join("");
}
