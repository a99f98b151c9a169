import { Notice } from "./notice.tsx";
import { Table } from "./table.tsx";

/** A field that the first writer left otherwise than the second one has it. */
export interface Difference {
  field: string;
  present: string;
  yours: string;
}

/** For a second writer: the record as it stands beside what was typed. Nothing is lost, nothing is decided for them. */
export function SomeoneWasFirst({ differences }: { differences: readonly Difference[] }) {
  return (
    <Notice kind="warning" title="Someone changed this record while you were writing.">
      {differences.length === 0 ? (
        <p>
          Look at the lists below once more, then save: yours replaces the present version, and both are in the history.
        </p>
      ) : (
        <>
          <p>
            Compare, take over what should stay, then save: yours replaces the present version, and both are in the
            history.
          </p>
          <Table label="The present version beside yours" columns={["Field", "Present version", "Yours"]}>
            {differences.map(({ field, present, yours }) => (
              <tr key={field}>
                <th scope="row">{field}</th>
                <td>{present || <span className="soft">empty</span>}</td>
                <td>{yours || <span className="soft">empty</span>}</td>
              </tr>
            ))}
          </Table>
        </>
      )}
    </Notice>
  );
}
