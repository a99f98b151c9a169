"use client";

import Link from "next/link";
import type { BoardFacts, PlaceFacts } from "#lib/core/board/index.ts";
import { PackageFlip } from "#lib/ui/package-flip.client.tsx";
import { Place } from "#lib/ui/place.tsx";
import styles from "./bench.module.css";

interface LookUpProps {
  found: PlaceFacts;
  facts: BoardFacts;
  sheets: Readonly<Record<string, string>>;
}

/** The record of the part under the probe: its outline with the pin pointed at, what else hangs on its net, its sheet. */
export function LookUp({ found, facts, sheets }: LookUpProps) {
  const { place, chip, pin } = found;
  const designator = place.kind === "net" ? null : place.designator.toUpperCase();
  const net = found.net && facts.nets.find((one) => one.name === found.net?.name);
  const sheet = designator && sheets[designator];
  return (
    <div className={styles.lookUp}>
      <p className={styles.lookUpHead}>
        <Place at={designator ?? (place.kind === "net" ? place.net : "")} unknown={!found.known} />
        {chip && (
          <Link prefetch={false} href={`/chips/${chip.slug}`}>
            {chip.name}
          </Link>
        )}
        {!chip && found.placement?.value}
        {found.placement?.socketed && <span className={styles.from}>socketed</span>}
        {sheet && <span className={styles.from}>sheet {sheet}</span>}
      </p>
      {net && (
        <p className={styles.netLine}>
          Net <b className="mono">{net.name}</b>
          {net.pins.length > 1 && (
            <>
              {" "}
              also at{" "}
              <span className="mono">
                {net.pins
                  .filter(
                    (one) => place.kind !== "pin" || one.toUpperCase() !== `${designator}.${place.pin}`.toUpperCase(),
                  )
                  .slice(0, MOST_PINS)
                  .join(" ")}
                {net.pins.length > MOST_PINS + 1 && ` and ${net.pins.length - MOST_PINS - 1} more`}
              </span>
            </>
          )}
        </p>
      )}
      {chip?.package && chip.pins.length > 0 && (
        <PackageFlip
          style={chip.package.style}
          name={chip.package.name}
          chip={chip.name}
          pins={chip.pins}
          highlight={pin ? [pin.number] : []}
        />
      )}
      {designator && !chip && <ConnectorPins designator={designator} found={found} facts={facts} />}
    </div>
  );
}

/** Other pins of a net that are named; a ground net has hundreds. */
const MOST_PINS = 12;

function ConnectorPins({ designator, found, facts }: Omit<LookUpProps, "sheets"> & { designator: string }) {
  const connector = facts.connectors.find((one) => one.designator.toUpperCase() === designator);
  if (!connector) return null;
  const here = found.place.kind === "pin" ? found.place.pin.toUpperCase() : "";
  return (
    <ul className={styles.contacts}>
      {connector.pins.map((contact) => (
        <li key={contact.number} aria-current={contact.number.toUpperCase() === here ? "true" : undefined}>
          <span className="mono">{contact.number}</span> {contact.name}
        </li>
      ))}
    </ul>
  );
}
