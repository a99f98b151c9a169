import { NET_ROLES, type NetRole } from "#lib/core/shared/index.ts";
import type { BoardView } from "#lib/services/boards/index.ts";
import { placementId } from "#lib/ui/board-drawing.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Section } from "#lib/ui/section.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { NET_ROLE_WORDS } from "#lib/ui/words.ts";
import { edit } from "./rails.tsx";
import styles from "../board.module.css";

type Net = BoardView["nets"][number];
type Connector = BoardView["connectors"][number];

/** Pins of a net named beside a connector's pin. */
const NAMED = 4;
/** Connectors up to this many pins stand open. */
const SMALL = 8;

function netId(name: string): string {
  return `net-${encodeURIComponent(name)}`;
}

/** Each connector with its pins, and where each pin leads. */
export function Connectors({ board, isMember }: { board: BoardView; isMember: boolean }) {
  const nets = new Map(board.nets.flatMap((net) => net.pins.map((pin) => [pin, net] as const)));
  return (
    <Section
      id="connectors"
      title="Connectors"
      count={board.connectors.length}
      aside={isMember && edit(board, "connectors")}
    >
      {board.connectors.length === 0 && (
        <EmptyState title="No connector is recorded yet.">
          <p>Their pins are pasted, one a line: 1 GND. Then J1.1 is a place with a name.</p>
        </EmptyState>
      )}
      {board.connectors.map((connector) => (
        <details key={connector.designator} className={styles.fold} open={connector.pins.length <= SMALL}>
          <summary>
            <Place at={connector.designator} /> {connector.name}{" "}
            <span className="soft">
              {[connector.kind, connector.pins.length === 1 ? "1 pin" : `${connector.pins.length} pins`]
                .filter(Boolean)
                .join(", ")}
            </span>
          </summary>
          <ConnectorTable connector={connector} nets={nets} />
        </details>
      ))}
    </Section>
  );
}

function ConnectorTable({ connector, nets }: { connector: Connector; nets: ReadonlyMap<string, Net> }) {
  if (connector.pins.length === 0) return <p className="soft">No pin is recorded.</p>;
  return (
    <Table
      label={`Pins of ${connector.designator}`}
      columns={[{ head: "Pin", number: true, narrow: true }, { head: "Name", narrow: true }, "Leads to"]}
    >
      {connector.pins.map((pin) => {
        const spelled = `${connector.designator}.${pin.number}`.toUpperCase();
        const net = nets.get(spelled);
        return (
          <tr key={pin.number}>
            <NumberCell>{pin.number}</NumberCell>
            <th scope="row" className="mono">
              {pin.name || <span className="soft">no name</span>}
            </th>
            <td className={styles.places}>{net && <Leads net={net} from={spelled} named={pin.name} />}</td>
          </tr>
        );
      })}
    </Table>
  );
}

/** The net and the first of its other pins; its name only where the pin is called otherwise. */
function Leads({ net, from, named }: { net: Net; from: string; named: string }) {
  const others = net.pins.filter((pin) => pin !== from);
  const isLarge = net.role === "power" || net.role === "ground";
  const shown = isLarge ? [] : others.slice(0, NAMED);
  return (
    <>
      {(net.name !== named || shown.length === 0) && <Place at={net.name} href={`#${netId(net.name)}`} />}
      {shown.map((pin) => (
        <Place key={pin} at={pin} href={`#${placementId(pin.split(".")[0] ?? "")}`} />
      ))}
      {others.length > shown.length && (
        <a className="soft" href={`#${netId(net.name)}`}>
          {shown.length === 0
            ? others.length === 1
              ? "1 more pin"
              : `${others.length} more pins`
            : `and ${others.length - shown.length} more`}
        </a>
      )}
    </>
  );
}

/** All nets, folded by what they are for. */
export function Nets({ board, isMember }: { board: BoardView; isMember: boolean }) {
  const groups = NET_ROLES.map((role) => ({ role, nets: board.nets.filter((net) => net.role === role) }));
  return (
    <Section id="nets" title="Nets" count={board.nets.length} aside={isMember && edit(board, "nets")}>
      {board.nets.length === 0 && (
        <EmptyState title="No net is recorded yet.">
          <p>Nets are the exception: the few that matter help most (clock, reset, the rails).</p>
        </EmptyState>
      )}
      {groups
        .filter(({ nets }) => nets.length > 0)
        .map(({ role, nets }) => (
          <details key={role} className={styles.fold}>
            <summary>
              {firstUpper(NET_ROLE_WORDS[role])} <span className="soft">{nets.length}</span>
            </summary>
            <NetTable role={role} nets={nets} />
          </details>
        ))}
    </Section>
  );
}

function NetTable({ role, nets }: { role: NetRole; nets: readonly Net[] }) {
  return (
    <Table label={`Nets: ${NET_ROLE_WORDS[role]}`} columns={[{ head: "Net", narrow: true }, "Pins"]}>
      {nets.map((net) => (
        <tr key={net.name} id={netId(net.name)}>
          <th scope="row" className="mono">
            {net.name}
          </th>
          <td className={styles.places}>
            {net.pins.map((pin) => (
              <Place key={pin} at={pin} href={`#${placementId(pin.split(".")[0] ?? "")}`} />
            ))}
          </td>
        </tr>
      ))}
    </Table>
  );
}

function firstUpper(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
