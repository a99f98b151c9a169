import type { PinRole, PinType } from "#lib/core/shared/index.ts";
import { QuantityText } from "#lib/ui/quantity-text.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { PIN_ROLE_WORDS, PIN_TYPE_WORDS } from "#lib/ui/words.ts";
import styles from "./chip.module.css";

export interface TabledPin {
  number: string;
  name: string;
  type: PinType;
  role: PinRole;
  activeLow: boolean;
  supply: number | null;
  unit: number;
}

/** A pin table: what each pin is called, what drives it and what it is for. */
export function PinTable({ label, pins }: { label: string; pins: readonly TabledPin[] }) {
  const hasGates = pins.some((pin) => pin.unit > 1);
  const columns = [{ head: "Pin", number: true, narrow: true }, "Name", "Role", "Type", ...(hasGates ? ["Gate"] : [])];
  return (
    <Table label={label} columns={columns}>
      {pins.map((pin) => (
        <tr key={pin.number}>
          <NumberCell>{pin.number}</NumberCell>
          <th scope="row" className="mono">
            <PinName name={pin.name} activeLow={pin.activeLow} />
          </th>
          <td>
            {pin.role === "unknown" ? "" : PIN_ROLE_WORDS[pin.role]}
            {pin.supply !== null && (
              <>
                {" "}
                <QuantityText text={`${pin.supply} V`} />
              </>
            )}
          </td>
          <td className={pin.type === "do-not-connect" ? styles.leave : undefined}>
            {pin.type === "unspecified" ? "" : PIN_TYPE_WORDS[pin.type]}
          </td>
          {hasGates && <td>{pin.unit === 0 ? "all" : pin.unit}</td>}
        </tr>
      ))}
    </Table>
  );
}

/** A pin's name with a bar over it where it is active low. */
function PinName({ name, activeLow }: { name: string; activeLow: boolean }) {
  if (name === "") return <span className="soft">no name</span>;
  if (!activeLow) return name;
  return (
    <>
      <span className={styles.low}>{name}</span>
      <span className="visually-hidden"> active low</span>
    </>
  );
}
