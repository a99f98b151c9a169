"use client";

import { useState } from "react";
import { PackageDrawing, type PackageDrawingProps } from "./package-drawing.tsx";
import styles from "./package-drawing.module.css";

/** The package drawing with one button that turns the board over. */
export function PackageFlip({ side = "component", ...drawing }: PackageDrawingProps) {
  const [fromBelow, setFromBelow] = useState(side === "solder");
  return (
    <div>
      <div className={styles.flip}>
        <button type="button" aria-pressed={fromBelow} onClick={() => setFromBelow((below) => !below)}>
          From the solder side
        </button>
      </div>
      <PackageDrawing {...drawing} side={fromBelow ? "solder" : "component"} />
    </div>
  );
}
