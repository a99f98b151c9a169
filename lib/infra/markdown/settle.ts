import type { ProseTree } from "./tree.ts";

type Node = ProseTree["children"][number];
type Element = Extract<Node, { type: "element" }>;

/** Photos that the club keeps; a picture from elsewhere would tell its server who reads what. */
const OWN_PICTURE = /^\/api\/v1\/attachments\/[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}(?:\?size=thumb)?$/;
/** For links out of the club: the page they lead to learns nothing and gains nothing. */
const OUTWARD = ["noopener", "nofollow", "ugc"];

/** Links, pictures, tables and headings as the club shows them. Changes the tree. */
export function settle(tree: ProseTree): void {
  const ranks = headingRanks(tree);
  each(tree, (element, inLink) => {
    if (element.tagName === "img") settlePicture(element, inLink);
    else if (element.tagName === "a") settleLink(element);
    else if (element.tagName === "input") element.properties.ariaLabel = "done";
    else if (HEADING.test(element.tagName)) element.tagName = ranks.next(element.tagName);
    else if (element.tagName === "th" && isBlank(element)) element.tagName = "td";
  });
}

function each(parent: { children: Node[] }, work: (element: Element, inLink: boolean) => void, inLink = false): void {
  for (const node of parent.children) {
    if (node.type !== "element") continue;
    const within = inLink || node.tagName === "a";
    work(node, inLink);
    each(node, work, within);
  }
}

function isBlank(element: Element): boolean {
  return element.children.every((child) => child.type === "text" && child.value.trim() === "");
}

/** A picture from elsewhere becomes a link to it, named by its description; within a link, the description alone. */
function settlePicture(element: Element, inLink: boolean): void {
  const { src, alt } = element.properties;
  const address = typeof src === "string" ? src : "";
  if (OWN_PICTURE.test(address)) {
    element.properties = { ...element.properties, loading: "lazy", decoding: "async" };
    return;
  }
  const name = typeof alt === "string" && alt !== "" ? alt : address || "picture";
  const away = !inLink && /^https?:/i.test(address);
  element.tagName = away ? "a" : "span";
  element.properties = away ? { href: address, rel: OUTWARD } : {};
  element.children = [{ type: "text", value: name }];
}

function settleLink(element: Element): void {
  const { href } = element.properties;
  if (typeof href !== "string" || href.startsWith("//") || href.startsWith("/\\")) {
    element.tagName = "span";
    element.properties = {};
    return;
  }
  if (/^[a-z][a-z0-9+.-]*:/i.test(href)) element.properties.rel = OUTWARD;
}

const HEADING = /^h[1-6]$/;

/** Headings step down one at a time from `h1`, whatever rank the writer began with or jumped to. */
function headingRanks(tree: ProseTree): { next(tagName: string): string } {
  const used = new Set<number>();
  each(tree, (element) => HEADING.test(element.tagName) && used.add(Number(element.tagName[1])));
  const order = [...used].toSorted((a, b) => a - b);
  let before = 0;
  return {
    next(tagName) {
      const rank = Math.min(order.indexOf(Number(tagName[1])) + 1, before + 1);
      before = rank;
      return `h${rank}`;
    },
  };
}
