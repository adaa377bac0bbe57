package sledwright.mail;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Volumes of drives: how many drives of which capacity, or what is usable, at which level. */
final class DriveWords implements MailRule {

    private static final Pattern COUNTED = Forms.of("drive.counted");
    private static final Pattern RANGE = Forms.of("drive.range");
    private static final Pattern OF_CAPACITY = Forms.of("drive.of-capacity");
    private static final Pattern USABLE = Forms.of("drive.usable");
    private static final Pattern IN_VOLUME = Forms.of("drive.in-volume");
    private static final Pattern LEVEL = Forms.of("drive.level");
    private static final Pattern SPARES = Forms.of("drive.spares");
    private static final Pattern KIND = Forms.of("drive.kind");
    private static final Pattern SPEAKS = Forms.of("drive.speaks");

    /** A volume as far as a sentence has told of it. */
    private static final class Volume {
        private final int at;
        private final List<String> words = new ArrayList<>();
        private final List<String> kinds = new ArrayList<>();
        private Optional<BigDecimal> count = Optional.empty();
        private BigDecimal gb;
        private boolean usable;
        private String level = "";
        private String spares = "";

        private Volume(int at) {
            this.at = at;
        }
    }

    @Override
    public void read(Passage passage, MailFindings findings) {
        if (!passage.has(SPEAKS)) {
            return;
        }
        passage.each(RANGE, hit -> {
            // "Sixty-four" is one number.
            if (hit.has("to") || Character.isDigit(hit.group("n").charAt(0))) {
                hit.take();
                findings.unread(hit.at(), hit.words(), "which capacity?");
            }
        });
        List<Volume> volumes = new ArrayList<>();
        for (Pattern form : List.of(USABLE, COUNTED, OF_CAPACITY, IN_VOLUME)) {
            passage.each(form, hit -> {
                Volume volume = new Volume(hit.at());
                volume.usable = form == USABLE;
                volume.gb = hit.number("c").multiply(hit.group("u").startsWith("t") ? BigDecimal.valueOf(1000) : BigDecimal.ONE);
                if (form != USABLE) {
                    volume.count = hit.has("n") ? Optional.of(hit.number("n"))
                            : form != IN_VOLUME && hit.has("one") ? Optional.of(BigDecimal.ONE) : Optional.empty();
                }
                if (form == COUNTED || form == OF_CAPACITY) {
                    volume.kinds.add(hit.group("k"));
                }
                hit.take();
                volume.words.add(hit.words());
                if (Numerals.isDoubtful(hit.group("c"))) {
                    findings.unread(hit.at(), hit.words(), "does the point divide thousands?");
                } else {
                    volumes.add(volume);
                }
            });
        }
        volumes.sort((one, other) -> Integer.compare(one.at, other.at));
        if (volumes.isEmpty()) {
            return;
        }
        passage.each(LEVEL, hit -> {
            hit.take();
            Volume volume = owner(volumes, hit.at());
            String level = hit.has("l") ? hit.group("l").replace("1+0", "10") : hit.has("mirror") ? "1" : "0";
            volume.words.add(hit.words());
            volume.level = volume.level.isEmpty() || volume.level.equals(level) ? level : "?";
        });
        passage.each(SPARES, hit -> {
            hit.take();
            Volume volume = owner(volumes, hit.at());
            volume.words.add(hit.words());
            volume.spares = hit.has("n") ? hit.plain("n") : "1";
        });
        passage.each(KIND, hit -> {
            if (hit.has("not")) {
                return;
            }
            hit.take();
            Volume volume = owner(volumes, hit.at());
            volume.words.add(hit.words());
            volume.kinds.add(hit.group("k"));
        });
        volumes.forEach(volume -> tell(volume, findings));
    }

    /** What is said of a volume stands behind its capacity; only of the first some may stand before it. */
    private static Volume owner(List<Volume> volumes, int at) {
        Volume owner = volumes.get(0);
        for (Volume volume : volumes) {
            if (volume.at <= at) {
                owner = volume;
            }
        }
        return owner;
    }

    private static void tell(Volume volume, MailFindings findings) {
        String words = String.join(", ", volume.words);
        String kinds = String.join(" ", volume.kinds);
        boolean single = volume.count.filter(BigDecimal.ONE::equals).isPresent();
        String level = volume.level.isEmpty() && single ? "0" : volume.level;
        String wrong = wrong(volume, level);
        if (!wrong.isEmpty()) {
            findings.unread(volume.at, words, wrong);
            return;
        }
        String path = findings.nextVolume();
        int place = findings.volumes();
        BigDecimal usable = volume.usable || volume.count.isEmpty() ? volume.gb : usable(volume.count.get().intValue(), volume.gb, level);
        findings.wish(path + "name", place == 1 ? "system" : "data" + (place - 1), volume.at, words, "a name of its own");
        findings.wish(path + "usable_gb", Numerals.plain(usable), volume.at, words, usable.equals(volume.gb) ? ""
                : "what %s drives give at level %s".formatted(Numerals.plain(volume.count.orElseThrow()), level));
        findings.wish(path + "level", level, volume.at, words, volume.level.isEmpty() ? "a single drive" : "");
        Optional<String> kind = kind(kinds);
        kind.ifPresent(word -> findings.wish(path + "kind", word, volume.at, words));
        wire(kinds).ifPresent(word -> findings.wish(path + "interface", word, volume.at, words));
        if (!volume.spares.isEmpty()) {
            findings.wish(path + "hot_spares", volume.spares, volume.at, words);
        }
    }

    private static String wrong(Volume volume, String level) {
        if (level.isEmpty() || level.equals("?")) {
            return "at which level: 0, 1, 5, 6 or 10?";
        }
        if (!volume.usable && volume.count.isEmpty()) {
            return "how many drives, or how much of it usable?";
        }
        int count = volume.count.map(BigDecimal::intValue).orElse(0);
        boolean fits = volume.usable || switch (level) {
            case "1" -> count == 2;
            case "5" -> count >= 3;
            case "6" -> count >= 4;
            case "10" -> count >= 4 && count % 2 == 0;
            default -> count >= 1;
        };
        return fits ? "" : "%s drives do not make a volume of level %s".formatted(count, level);
    }

    private static BigDecimal usable(int count, BigDecimal gb, String level) {
        return gb.multiply(BigDecimal.valueOf(switch (level) {
            case "1" -> 1;
            case "5" -> count - 1;
            case "6" -> count - 2;
            case "10" -> count / 2;
            default -> count;
        }));
    }

    /** Drives that are called neither may be either. */
    private static Optional<String> kind(String words) {
        boolean ssd = words.matches(".*\\b(?:ssds?|nvme|flash)\\b.*");
        boolean hdd = words.matches(".*\\b(?:hdds?|hard|spinning|dis[ck]s?)\\b.*");
        return ssd ? Optional.of("ssd") : hdd ? Optional.of("hdd") : Optional.empty();
    }

    private static Optional<String> wire(String words) {
        return words.contains("nvme") ? Optional.of("NVMe") : words.contains("sata") ? Optional.of("SATA")
                : words.matches(".*\\bsas\\b.*") ? Optional.of("SAS") : Optional.empty();
    }
}
