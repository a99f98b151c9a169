import type { Metadata } from "next";
import { Caution, Notice } from "#lib/ui/notice.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import styles from "./safety.module.css";

export const metadata: Metadata = { title: "Safety at the bench" };

export default function SafetyPage() {
  return (
    <div className={styles.page}>
      <PageHead
        title="Safety at the bench"
        lead="What can hurt you, and what can hurt the board. A machine that waits until club night loses nothing."
      />
      <Notice kind="info" title="These pages are members’ notes, not instructions for electrical work.">
        <p>
          Your country’s rules and the club’s own come first. Work on mains parts, and on anything that is live while it
          is open, is for people who are qualified under local rules. If you are not, or not sure: stop here, close the
          lid, and bring it to club night.
        </p>
      </Notice>

      <Section id="people" title="People">
        <Caution harms="people" title="Mains kills. So do the primary sides of switch-mode supplies.">
          <p>
            Unplugged is off; switched off is not. Whatever is live while it is open is left to qualified people. A fuse
            does not protect you.
          </p>
        </Caution>
        <Caution harms="people" title="A chassis can be live.">
          <p>
            Some sets join their chassis to the mains. An isolating transformer goes on the set, never on the
            oscilloscope: its ground clip is mains earth, and taking that earth away moves the danger to your hands.
          </p>
        </Caution>
        <Caution harms="people" title="A picture tube holds its charge, and it can implode.">
          <p>
            The anode keeps thousands of volts for days after the plug is out. Discharging it is a job to be shown, not
            read about. Never lift a tube by its neck; wear eye protection.
          </p>
        </Caution>
        <Caution harms="people" title="Large capacitors stay charged.">
          <p>
            Unplug, discharge through a resistor, then measure that the charge is gone. A screwdriver is no resistor.
          </p>
        </Caution>
        <ul className={styles.list}>
          <li>
            <strong>Hot parts</strong> burn after the power is off. Regulators, power transistors, lamps and the iron
            need minutes.
          </li>
          <li>
            <strong>Solder and flux:</strong> old solder holds lead. Draw the fumes away, wash your hands before you
            eat.
          </li>
          <li>
            <strong>Cleaners and cooling spray</strong> burn, and their vapour gathers in a closed room. No iron, no
            power and no flame near them until they have dried.
          </li>
          <li>
            <strong>UV lamps</strong> for EPROMs harm eyes and skin. The drawer stays shut.
          </li>
          <li>
            <strong>Leaking batteries and capacitors</strong> are corrosive. Gloves, eye protection, and a rinse of what
            they touched.
          </li>
          <li>
            <strong>Lithium cells</strong> are never charged from the board, shorted or soldered to; a swollen one goes
            outside.
          </li>
        </ul>
      </Section>

      <Section id="board" title="The board">
        <Caution harms="board" title="Ohms, diode, capacitance and ESR only on an unplugged, discharged board.">
          <p>Power off means unplugged. A charged capacitor destroys the meter, or the part, or both.</p>
        </Caution>
        <Caution harms="board" title="Never plug or pull anything while power is on.">
          <p>
            No chips, no connectors, no boards. Count the pins of a connector: off by one puts +12 V on a data line.
          </p>
        </Caution>
        <Caution harms="board" title="Before a battery comes out: what does it keep?">
          <p>
            Calibration, patches, high scores or a key may be gone for ever. Save them first, or hold the voltage up
            from outside.
          </p>
        </Caution>
        <Caution harms="board" title="A programmer set to the wrong type can destroy the only copy.">
          <p>Read first, twice, and compare. Then keep the image in two places before anything is written.</p>
        </Caution>
        <ul className={styles.list}>
          <li>
            <strong>Static:</strong> a strap and a mat, both tied to the board’s ground; chips lie on foam until they go
            in.
          </li>
          <li>
            <strong>Chips turned round</strong> die at once. Look for the notch, then look again.
          </li>
          <li>
            <strong>Tantalums reversed</strong> burn. The mark on them is the plus, as a rule; measure which hole is
            which.
          </li>
          <li>
            <strong>Parts with several supplies</strong> (-5, +5 and +12 V) may die without the negative one: measure it
            before the chip goes in.
          </li>
          <li>
            <strong>A good part into a bad place:</strong> measure the supply pins of its place first. After a dead coil
            driver, measure the coil and its diode.
          </li>
        </ul>
      </Section>

      <Section id="order" title="Before the first power-on">
        <ol className={styles.list}>
          <li>Look: burnt, leaking, corroded, cracked, fitted the wrong way round.</li>
          <li>With power off: ground and supply pins lead to their rails, and no rail to another.</li>
          <li>The supply alone, on a dummy load: every rail right before it meets the board.</li>
          <li>The board with its current limited. Watch current and heat; negative rails first.</li>
          <li>
            Everything that can be known with power off comes before. Going back means unplugged and discharged again.
          </li>
        </ol>
        <p>
          Cautions that apply to a board stand on its page and in each of its cases. Where mains, a picture tube or more
          than 60 V is on it, you tick them before you measure there.
        </p>
      </Section>
    </div>
  );
}
