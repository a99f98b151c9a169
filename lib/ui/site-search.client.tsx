"use client";

import { usePathname } from "next/navigation";
import { SearchBox } from "./search-box.client.tsx";

/** The header's search box; not on the pages that have one of their own. */
export function SiteSearch() {
  const path = usePathname();
  if (path === "/" || path === "/search") return null;
  return <SearchBox />;
}
