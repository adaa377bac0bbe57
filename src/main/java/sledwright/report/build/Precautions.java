package sledwright.report.build;

import java.util.List;

/**
 * What whoever opens a machine should know. The resistances are those of ANSI/ESD S20.20 and IEC 61340-5-1; the rest is common
 * practice, no source.
 */
public final class Precautions {

    public static final String MANUALS =
            "The makers' manuals for the machine and the parts come before this list. For the mains and the enclosure follow "
            + "the local code; leave work on them to qualified people.";

    public static final String POWER_OFF =
            "Shut the machine down, switch it off and unplug every cord, or draw the sled from its enclosure. Wait as long as "
            + "the manual says, until every light is out: supplies hold charge.";

    public static final String HOT = "Heat sinks, processors and modules are hot after work and burn the skin. Let them cool.";

    public static final String STATIC =
            "Static kills parts unseen. Wear a wrist strap on a grounded work surface and test both before: a wrist-strap system "
            + "must be below 3.5 x 10^7 ohm, a work surface below 1 x 10^9 ohm (ANSI/ESD S20.20, IEC 61340-5-1). Never wear a strap at a"
            + " machine under power.";

    public static final String ORDER =
            "Power off and unplug first, let hot parts cool, and only then put on the wrist strap: never at a machine under power.";

    public static final String BAGS =
            "Keep parts in their shielding bags until they go in, and hold modules and processors by their edges.";

    public static final List<String> BEFORE = List.of(MANUALS, POWER_OFF, HOT, STATIC, BAGS);

    public static final List<String> HEAT_SINKS = List.of(
            "Clean a processor and its heat sink before the sink goes on, and put on fresh thermal compound. Tighten in the order and to"
            + " the torque that the "
                    + "manual states.");

    public static final List<String> DRIVES = List.of(
            "Before drives come out, change their volume or hang on another driver, save what they hold and try whether it can be read"
            + " back: a volume that is made again is empty, and one driver may not read what another wrote.");

    private Precautions() {
    }
}
