import type { ReactNode } from "react";
import styles from "./photo-grid.module.css";

export interface Photo {
  /** Address of the thumbnail. */
  src: string;
  /** Address of the whole photo. */
  href: string;
  /** What is to be seen. */
  alt: string;
  width: number;
  height: number;
  caption?: ReactNode;
}

/** Photos as thumbnails that open the whole picture. */
export function PhotoGrid({ photos }: { photos: readonly Photo[] }) {
  if (photos.length === 0) return null;
  return (
    <ul className={styles.grid}>
      {photos.map(({ src, href, alt, width, height, caption }) => (
        <li key={src}>
          <figure>
            <a href={href}>
              {/* Thumbnails are made when the photo is stored; there is nothing left to optimise. */}
              {/* oxlint-disable-next-line nextjs/no-img-element */}
              <img src={src} alt={alt} width={width} height={height} loading="lazy" decoding="async" />
            </a>
            {caption && <figcaption>{caption}</figcaption>}
          </figure>
        </li>
      ))}
    </ul>
  );
}
