package sledwright.report.letter;

import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Somebody who writes or receives a mail.
 *
 * @param name    what a person calls them; may be empty
 * @param address where a line of what is known of them is one
 */
public record Correspondence(String name, Optional<InternetAddress> address) {

    /** @param lines that say who somebody is and how to reach them; the first that is an address is theirs */
    public static Correspondence of(String name, List<String> lines) {
        return new Correspondence(Headline.of(name), lines.stream().flatMap(line -> address(line).stream()).findFirst());
    }

    private static Optional<InternetAddress> address(String line) {
        try {
            InternetAddress[] found = InternetAddress.parse(line.strip(), true);
            return found.length == 1 && found[0].getAddress().indexOf('@') > 0 && found[0].getAddress().chars().allMatch(c -> c < 128)
                    && Headline.of(line).equals(line.strip()) ? Optional.of(found[0]) : Optional.empty();
        } catch (AddressException none) {
            return Optional.empty();
        }
    }

    /** As a header has it: a name with its address, or a group of that name without members (RFC 5322, section 3.4; RFC 6854). */
    String header() {
        try {
            if (address.isPresent()) {
                String display = address.get().getPersonal() == null ? name : address.get().getPersonal();
                return new InternetAddress(address.get().getAddress(), display.isEmpty() ? null : display, StandardCharsets.UTF_8.name())
                        .toString();
            }
            String quoted = new InternetAddress("nobody@invalid", name, StandardCharsets.UTF_8.name()).toString();
            return name.isEmpty() ? "undisclosed-recipients:;" : quoted.substring(0, quoted.lastIndexOf('<')).strip() + " :;";
        } catch (UnsupportedEncodingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
