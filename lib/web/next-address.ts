/** Where to go after signing in: a path of this club, never another site. */
export function nextAddress(asked: string | undefined): string {
  if (!asked || !asked.startsWith("/") || asked.startsWith("//") || asked.includes("\\")) return "/";
  return asked;
}
