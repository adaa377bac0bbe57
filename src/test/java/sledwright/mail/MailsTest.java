package sledwright.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;

class MailsTest {

    private static final Catalog SHOP = CatalogReader.read(Path.of("catalogs/heronfold-yard"));
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 18);

    static List<WrittenMail> developed() {
        return WrittenMail.of("developed.txt");
    }

    @ParameterizedTest
    @MethodSource("developed")
    void whatTheGrammarWasMadeWithIsUnderstood(WrittenMail mail) {
        MailReading reading = read(mail.text());
        assertThat(WrittenMail.found(reading)).as(mail.number() + " " + mail.text() + "\n" + reading.unread()).isEqualTo(mail.expected());
        assertThat(mail.silent(reading)).as(mail.number() + " " + reading.unread()).isEmpty();
    }

    /** The other half is only counted; which of it fails is not looked at, or the count would be worth nothing. The document has the count. */
    @Test
    void theOtherHalfIsCounted() throws IOException {
        List<WrittenMail> mails = WrittenMail.of("held-out.txt");
        assertThat(mails).hasSize(100);
        int wished = 0;
        int right = 0;
        int wrong = 0;
        int whole = 0;
        for (WrittenMail mail : mails) {
            MailReading reading = read(mail.text());
            Set<String> found = WrittenMail.found(reading);
            Set<String> both = new TreeSet<>(found);
            both.retainAll(mail.expected());
            wished += mail.expected().size();
            right += both.size();
            wrong += found.size() - both.size();
            whole += found.equals(mail.expected()) && mail.silent(reading).isEmpty() ? 1 : 0;
        }
        String counted = "%s of %s wishes understood, %s misread, %s of 100 mails wholly as they should be".formatted(right, wished, wrong, whole);
        assertThat(Files.readString(Path.of("docs/mails.md"))).contains(counted);
        assertThat(right).as(counted).isGreaterThan(wished * 95 / 100);
    }

    /** Every word that is neither courtesy nor of a wish is listed, so nothing is lost in silence. */
    @Test
    void nothingIsLost() {
        for (WrittenMail mail : WrittenMail.of("held-out.txt")) {
            MailReading reading = read(mail.text());
            String told = reading.wishes().stream().map(MailWish::words).collect(Collectors.joining(" "))
                    + reading.unread().stream().map(UnreadWords::words).collect(Collectors.joining(" "));
            mail.text().replace("/", " ").lines().filter(line -> !line.startsWith(">") && !Courtesy.FAREWELL.matcher(line).matches()).flatMap(line -> List.of(line.split("\\s+")).stream())
                    .filter(word -> word.matches(".*\\d.*")).map(word -> word.replaceAll("^\\W+|\\W+$", "")).filter(word -> !told.contains(word))
                    .forEach(lost -> assertThat(mail.text()).as(lost + " in " + mail.number() + ": " + told).containsPattern("(instead of|rather than) (the )?" + lost));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "We need 16 cores but not 64 GB RAM. | 64 GB RAM | it says not; what is wanted?",
        "32 GB of RAM are not enough. | 32 GB | it says not",
        "Two disks of 2 TB in RAID 5, 8 cores. | RAID 5 | 2 drives do not make a volume of level 5",
        "SSDs of 480 GB in RAID 1. | 480 GB | how many drives, or how much of it usable?",
        "RAID 1 or RAID 10 with 4 TB usable on disks | 4 TB | at which level: 0, 1, 5, 6 or 10?",
        "A 1.920 TB SSD | 1.920 TB | does the point divide thousands?",
        "2.048 GB RAM | 2.048 GB | does the point divide thousands?",
        "16 cores by 31 November | 31 November | there is no such day",
        "16 cores by 2026-11-02 | 2026-11-02 | this day is over",
        "16 cores, 3 December | 3 December | is this the last day of delivery?",
        "16 cores, 1000 EUR | 1000 EUR | is this the most it may cost?",
        "around 1000 EUR | 1000 EUR | what is the most it may cost?",
        "about 16 cores | about 16 cores | neither the least nor the most; which figure holds?",
        "16.5 cores | 16.5 cores | cores are whole",
        "with 24-core processors | 24-core processors | how many of these processors?",
        "new parts only, nothing new | new | no condition is left then",
        "Our old server had 16 cores | 16 cores | is about a machine that is there",
        "16 cores next Tuesday | next Tuesday | which day is the last?",
        "within ten working days | ten working days | days count, working days do not; by which day?",
        "16 cores. Then 24 cores. | 16 cores | the mail says this in 2 ways; which holds?",
        "> 16 cores | 16 cores | quoted from an earlier mail",
        "500 GB | 500 GB | of memory, or of drives?",
        "for $900 | for $900 | the shop's prices are in EUR",
        "two NV4R16-24-21 | two NV4R16-24-21 | that it is used is a wish, how often is not",
        "dual port 25GbE cards, 2 x MG-2X25 | 2 x MG-2X25 | that it is used is a wish, how often is not",
        "32 threads | 32 threads | threads are no wish; how many cores?",
        "at most 16 cores | at most 16 cores | there is no wish for the most cores",
        "3 GHz | 3 GHz | the base clock, or the clock with all cores busy?",
        "480-960 GB SSD in RAID 1 | 480-960 GB SSD | which capacity?",
        "480 to 960 GB | 480 to 960 GB | of memory, or of drives?",
        "2.048 to 4.096 GB RAM | 2.048 to 4.096 GB RAM | does the point divide thousands?",
        "64 GB RAM, budget 450 EUR including 19 % tax | budget 450 EUR including 19 % tax | the shop's tax is another; what is the most before tax?",
        "dual socket 12-core, 64 GB RAM | dual socket 12-core | so many cores in all, or in each processor?",
        "16 cores per server, 2 servers per rack, 3 racks, 64 GB | 2 servers per rack | how many machines in all?",
        "3 racks with 2 servers each, at most 900 EUR each | at most 900 EUR each | of how many machines?",
        "dual CPU, 12 cores each | dual CPU, 12 cores each | so many cores in all, or in each processor?",
        "two processors with 12 cores | two processors with 12 cores | so many cores in all, or in each processor?",
        "8 cores, up to 128 GB RAM | up to 128 GB RAM | there is no wish for the most memory; how much at least?",
        "8 cores on at most two sockets | on at most two sockets | exactly so many, or fewer, too?",
        "16 cores, please answer by Friday | by Friday | is this the last day of delivery?",
        "16 cores. We now have 3 servers with 8 cores. | 3 servers | is about a machine that is there",
        "16 cores, budget 1 500 EUR | 1 500 EUR | ''",
        "16 cores, 2 disks at least and no more than four | no more than four | ''",
        "4 x 4 TB disks in RAID 10, not SAS | not SAS | ''",
        "16 cores, pay in 30 days | in 30 days | is this the time of delivery?",
        "16 cores; we need an answer within 2 days | within 2 days | is this the time of delivery?",
        "1 or 2 servers, 8 cores | 1 or 2 servers | how many machines in all?",
        "We want to replace 4 servers by 2 with 32 cores | replace 4 servers by 2 | how many machines in all?",
        "16 cores with 4 GB each | 16 cores with 4 GB each | so much memory for each core, or for each machine?",
        "8 cores at 86 °F | 86 °F | ''",
        "use QQ7-4410 | QQ7-4410 | no part of the catalogue has this number"})
    void whatIsInDoubtIsAskedAndNotGuessed(String mail, String words, String why) {
        MailReading reading = read(mail);
        assertThat(reading.unread()).as(reading.toString()).anyMatch(unread -> unread.words().contains(words) && unread.why().startsWith(why));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "8 cores, 64-128 GB RAM | require.cores = 8, require.memory_gb = 64",
        "8 cores, 64 to 128 GB | require.cores = 8, require.memory_gb = 64",
        "memory: 512 GB to 1 TB | require.memory_gb = 512",
        "between 64 GB and sixty-four GB of memory | require.memory_gb = 64",
        "sixty-four GB RAM | require.memory_gb = 64",
        "EUR 450 incl. 20% VAT each, 3 servers | limit.price_with_tax = 1350, machines = 3",
        "budget 450 EUR (incl. VAT) | limit.price_with_tax = 450",
        "at most 450 EUR, VAT included | limit.price_with_tax = 450",
        "at most 450 EUR plus 20% VAT | limit.price = 450",
        "budget 1.500,00 EUR | limit.price = 1500",
        "dual 12-core, 64 GB RAM | require.cores = 24, require.memory_gb = 64, require.processors = 2",
        "6 servers in 2 racks | machines = 6",
        "2 CPUs with at least 10 cores each | require.cores = 20, require.processors = 2",
        "two CPUs, each with 12 cores | require.cores = 24, require.processors = 2",
        "eight 16GB DIMMs, 12 cores | require.cores = 12, require.memory_gb = 128",
        "16 cores, 256 GB RAM (32 GB x 8 DDR4) | require.cores = 16, require.memory_gb = 256",
        "16\u200b cores\ufeff, 64 GB RAM | require.cores = 16, require.memory_gb = 64",
        "16\u200e\u2009co\u00adres, 64\u2007GB RAM | require.cores = 16, require.memory_gb = 64",
        "16 cores, 32GB x 8 RDIMM | require.cores = 16, require.memory_gb = 256",
        "12 cores, 4 sticks of 32 GB | require.cores = 12, require.memory_gb = 128",
        "64GB RAM, no 4-rank modules | require.memory_gb = 64",
        "16 cores, no 2 TB drives | require.cores = 16",
        "16 cores, quad port 1Gb NIC | require.cards.0.kind = network, require.cards.0.port_gbit = 1, require.cards.0.ports = 4, require.cores = 16",
        "16 cores, 2 x HT-250 | require.cards.0.count = 2, require.cards.0.sku = HT-250, require.cores = 16",
        "16 cores with an MG-4X1 and two HT-250 | require.cards.0.sku = MG-4X1, require.cards.1.count = 2, require.cards.1.sku = HT-250, require.cores = 16",
        "16 cores, dual port 25GbE card (MG-2X25) | require.cards.0.kind = network, require.cards.0.port_gbit = 25, require.cards.0.ports = 2, require.cores = 16, use = MG-2X25",
        "16 cores, no HT-250 | forbid = HT-250, require.cores = 16",
        "16+ cores | require.cores = 16",
        ">= 16 cores, >= 64 GB RAM | require.cores = 16, require.memory_gb = 64",
        "twenty-four servers, 8 cores | machines = 24, require.cores = 8",
        "two processors with at least 16 cores in total | require.cores = 16, require.processors = 2",
        "single CPU with 16 cores | require.cores = 16, require.processors = 1",
        "anything but used, 16 cores | limit.conditions = new, limit.conditions = refurbished, require.cores = 16",
        "anything but FINCH-S4 or FINCH-S2 | forbid = FINCH-S2, forbid = FINCH-S4",
        "no TERN-R2 or LAPWING-R2 | forbid = LAPWING-R2, forbid = TERN-R2",
        "TERN-R2 or LAPWING-R2 | platforms = LAPWING-R2, platforms = TERN-R2",
        "anything but TERN-R2 | forbid = TERN-R2",
        "budget EUR 1'500.00 | limit.price = 1500",
        "must not be used | limit.conditions = new, limit.conditions = refurbished",
        "refurbished would do | limit.conditions = new, limit.conditions = refurbished",
        "new preferred, used ok | limit.conditions = new, limit.conditions = refurbished, limit.conditions = used",
        "8 cores, no SSD, 2 x 4TB HDD mirrored | require.cores = 8, require.storage.0.kind = hdd, require.storage.0.level = 1, require.storage.0.usable_gb = 4000"})
    void whatLooksLikeSomethingElseIsReadAsItIsMeant(String mail, String wishes) {
        assertThat(WrittenMail.found(read(mail))).as(mail).containsExactly(wishes.split(", "));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"8 cores 32 GB RAM 2x 480GB SSD RAID 1 | 480 | 1", "8 cores\t32GB ram\t1x 500GB ssd | 500 | 0"})
    void drivesBehindTheMemoryAreNoModules(String mail, String usable, String level) {
        assertThat(read(mail).wishes()).extracting(wish -> wish.key() + "=" + wish.value())
                .contains("require.memory_gb=32", "require.storage.0.usable_gb=" + usable, "require.storage.0.level=" + level);
        assertThat(read(mail).unread()).isEmpty();
    }

    @Test
    void theThousandsOfAnAmountWithCentsAreNotAskedAbout() {
        assertThat(read("at most 1.500,00 EUR").unread()).isEmpty();
        assertThat(read("at most 1.500 EUR").unread()).extracting(UnreadWords::why).containsExactly("does the point divide thousands?");
    }

    /** Mail programs that put no sign before each line of the mail that is answered. */
    @Test
    void anEarlierMailBelowIsQuotedUnlessItIsHandedOn() {
        String earlier = "\n\n-----Original Message-----\nFrom: Sam\nWe need 24 cores and 128 GB RAM by Friday.\n";
        assertThat(WrittenMail.found(read("12 cores, 64 GB RAM" + earlier))).containsExactly("require.cores = 12", "require.memory_gb = 64");
        assertThat(read("12 cores, 64 GB RAM" + earlier).unread()).extracting(UnreadWords::why).contains("quoted from an earlier mail");
        assertThat(WrittenMail.found(read("Please quote." + earlier))).contains("require.cores = 24", "require.memory_gb = 128");
    }

    @Test
    void whatWasWorkedOutIsSaid() {
        assertThat(read("2 machines, two 8-core processors each, 8 x 16 GB RAM, four 4 TB disks in RAID 6, at most 900 EUR each, within 2 weeks, by the end of the month, 1 TB RAM").wishes())
                .extracting(MailWish::remark).contains("2 times 8", "what 4 drives give at level 6", "2 machines at 900", "in days", "the last day of it");
        assertThat(read("8 x 16 GB RAM; 20 to 30 cores; before 5 December").wishes()).extracting(MailWish::remark)
                .containsExactly("8 times 16; of which modules is left open", "the least of them", "the day before it");
        assertThat(read("1 TB of RAM and a single 1 TB SSD").wishes()).extracting(MailWish::remark).contains("1 TB is 1024 GB of memory", "a single drive", "a name of its own");
    }

    @Test
    void otherShopsHaveTheirOwnPartsAndMoney() {
        assertThat(WrittenMail.found(Mails.read("use M16, not H1-08, on WREN-2", CatalogReader.read(sledwright.samples.Folders.SHOP), TODAY)))
                .containsExactly("forbid = H1-08", "platforms = WREN-2", "use = M16");
    }

    @Test
    void longAndStrangeMailsAreReadInTime() {
        Random random = new Random(7);
        List<String> words = WrittenMail.of("developed.txt").stream().flatMap(mail -> List.of(mail.text().split("(?<=\\s)")).stream()).toList();
        List<Supplier<String>> kinds = List.of(() -> "1 ".repeat(2_000), () -> "a".repeat(9_000), () -> "two x ".repeat(700), () -> "1,000,".repeat(700),
                () -> "raid ssd ".repeat(500), () -> "a-".repeat(2_000), () -> " ".repeat(21_000), () -> "new or used, ".repeat(300), () -> "",
                () -> random.ints(800, 0, words.size()).mapToObj(words::get).collect(Collectors.joining()),
                () -> random.ints(3_000, 0, 0x2fff).filter(Character::isDefined).mapToObj(Character::toString).collect(Collectors.joining()));
        for (int i = 0; i < kinds.size(); i++) {
            String mail = kinds.get(i).get();
            Assertions.assertTimeout(Duration.ofSeconds(5), () -> read(mail), "kind " + i);
        }
        assertThat(read("x".repeat(Mails.LONGEST) + " and 16 cores").unread()).extracting(UnreadWords::why).contains("the mail is longer than 10000 letters");
    }

    private static MailReading read(String mail) {
        return Mails.read(mail, SHOP, TODAY);
    }
}
