import { encode } from "uqr";

/** Empty modules around the code; ISO/IEC 18004 asks for four. */
const QUIET_ZONE = 4;

export interface QrCodeProps {
  /** What the code says: an address of this club. */
  text: string;
  /** What it leads to: "Case 12". */
  label: string;
  /** Width as a CSS length, such as `28mm`. */
  size: string;
}

/** A QR code as a drawing; always black on white, or a phone cannot read it. */
export function QrCode({ text, label, size }: QrCodeProps) {
  const { data, size: modules } = encode(text, { ecc: "M", border: QUIET_ZONE });
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ""))).join("");
  return (
    <svg
      role="img"
      aria-label={`QR code: ${label}`}
      viewBox={`0 0 ${modules} ${modules}`}
      width={size}
      height={size}
      shapeRendering="crispEdges"
    >
      <rect width={modules} height={modules} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
